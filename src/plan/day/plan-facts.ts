import { type Answers, answersNow } from '../../day/answers/answers.ts';
import { isWaitedFor } from '../../day/answers/voice-answers.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import type { Day, Need, VoiceId } from '../../day/model.ts';
import { type Tickable, tickable } from '../../day/phones/ticks.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Move } from '../moves.ts';
import { pathEnds } from './day-paths.ts';
import type { PlannedChain } from './planned-chain.ts';

/** What accepting a plan adds to its moves and gangs. */
export type Beside = Extract<
  Draft,
  { kind: 'mute-set' | 'channels-tuned' | 'inputs-sent' | 'leads-plugged' }
>;

export const besidesIn = (drafts: readonly Draft[]): Beside[] =>
  drafts.filter((draft) => draft.kind !== 'gang-declared') as Beside[];

/** Says the moves in their order. */
export const sayMoves = (chain: PlannedChain, moves: readonly Move[]): void =>
  chain.say(...moves.flatMap(moveDrafts));

/** Who is needed from here on. Those no longer needed rest; those done or never asked for stay so. */
export function needDrafts(answers: Answers, wanted: ReadonlySet<VoiceId>): Draft[] {
  type Marked = { voice: VoiceId; need: Need };
  const were = neededIn(answers);
  const changed = answers.voices.flatMap(({ voice: { id }, need }): Marked[] => {
    if (wanted.has(id)) return need === 'needed' ? [] : [{ voice: id, need: 'needed' }];
    return were.has(id) ? [{ voice: id, need: 'resting' }] : [];
  });
  return changed.length > 0 ? [{ kind: 'voices-needed', voices: changed }] : [];
}

/** Each draft records only the move itself; its effects, such as a lead pushed out, are derived. */
function moveDrafts(move: Move): Draft[] {
  switch (move.kind) {
    case 'take':
      return [{ kind: 'transmitter-worn', transmitter: move.transmitter, voice: null }];
    case 'fit':
      return [{ kind: 'transmitter-worn', transmitter: move.transmitter, voice: move.to }];
    case 'throw':
      return [
        { kind: 'selectors-thrown', selectors: [move.selector], position: move.to === 'b' ? 'b' : 'a' },
      ];
    case 'retune':
      return [
        ...(move.leaving ?? []).map((channel): Draft => tuning(channel, null)),
        tuning(move.channel, move.to),
      ];
    case 'route':
      return [{ kind: 'inputs-sent', routes: [{ input: move.input, tracks: [move.to] }] }];
    case 'replug': {
      const { lead, from, input, position } = pathEnds(move.path);
      return [{ kind: 'leads-plugged', leads: [{ lead, from, to: input, position }] }];
    }
  }
}

/** How a tick names a move: by what it comes to, whatever else it takes. */
export const tickableOf = (move: Move): Tickable => tickable(moveDrafts(move).at(-1)!);

const tuning = (channel: string, transmitter: string | null): Draft => ({
  kind: 'channels-tuned',
  tunings: [{ channel, transmitter }],
});

/**
 * Those needed now, and every hardline that is up unless marked as not needed: a boom does not wait to be
 * asked for.
 */
export const neededNow = (day: Day): ReadonlySet<VoiceId> => neededIn(answersNow(day));

/** The same wherever these answers are from. */
export const neededIn = ({ voices }: Pick<Answers, 'voices'>): ReadonlySet<VoiceId> =>
  new Set(
    voices.flatMap(({ voice, need, tracks }) => {
      const isUp = isHardline(voice.kind) && tracks.length > 0 && need === null;
      return isWaitedFor(need) || isUp ? voice.id : [];
    }),
  );
