import { answersNow } from '../../day/answers/answers.ts';
import { isWaitedFor } from '../../day/answers/voice-answers.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import type { Day, Need, VoiceId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Move } from '../moves.ts';
import type { Plan } from '../setup/plan-next-setup.ts';
import { pathEnds } from './day-paths.ts';
import { keepPromises } from './kept-promises.ts';
import { PlannedChain } from './planned-chain.ts';

/**
 * A plan, or the part of it that is accepted, as facts: who is needed, the moves in their order, and whatever it takes
 * besides for the day to record everybody as promised whose chain stands then.
 */
export function factsOfPlan(
  day: Day,
  wanted: ReadonlySet<VoiceId>,
  plan: Plan,
  accepted: readonly Move[] = plan.moves,
): Draft[] {
  const { moved, besides } = partsOfPlan(day, wanted, plan, accepted);
  return [...moved, ...besides];
}

/** What accepting a plan says besides its moves and its gangs. */
export type Beside = Extract<
  Draft,
  { kind: 'mute-set' | 'channels-tuned' | 'inputs-sent' | 'leads-plugged' }
>;

/** Who is muted or heard again, and what is tuned away, sent elsewhere or unplugged: whoever accepts a plan sees it first. */
export const besidesMoves = (
  day: Day,
  wanted: ReadonlySet<VoiceId>,
  plan: Plan,
  accepted: readonly Move[] = plan.moves,
): Beside[] =>
  partsOfPlan(day, wanted, plan, accepted).besides.filter(
    (draft) => draft.kind !== 'gang-declared',
  ) as Beside[];

function partsOfPlan(
  day: Day,
  wanted: ReadonlySet<VoiceId>,
  plan: Plan,
  accepted: readonly Move[],
): { readonly moved: readonly Draft[]; readonly besides: readonly Draft[] } {
  const chain = new PlannedChain(day);
  const moved = [...needDrafts(day, wanted), ...accepted.flatMap(moveDrafts)];
  chain.say(...moved);
  keepPromises(chain, plan.recorded, accepted.length >= plan.moves.length);
  return { moved, besides: chain.drafts.slice(moved.length) };
}

/** Who is needed from here on. Whoever was and is not any more rests; whoever is done or was never asked for stays so. */
function needDrafts(day: Day, wanted: ReadonlySet<VoiceId>): Draft[] {
  type Marked = { voice: VoiceId; need: Need };
  const were = neededNow(day);
  const changed = answersNow(day).voices.flatMap(({ voice: { id }, need }): Marked[] => {
    if (wanted.has(id)) return need === 'needed' ? [] : [{ voice: id, need: 'needed' }];
    return were.has(id) ? [{ voice: id, need: 'resting' }] : [];
  });
  return changed.length > 0 ? [{ kind: 'voices-needed', voices: changed }] : [];
}

/** Each says only what the move does: what follows from it, such as a lead pushed out, follows from the line. */
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

const tuning = (channel: string, transmitter: string | null): Draft => ({
  kind: 'channels-tuned',
  tunings: [{ channel, transmitter }],
});

/**
 * Whoever is needed now, and every hardline that is up unless somebody said that it is not needed: a boom does not wait
 * to be asked for.
 */
export const neededNow = (day: Day): ReadonlySet<VoiceId> =>
  new Set(
    answersNow(day).voices.flatMap(({ voice, need, tracks }) => {
      const isUp = isHardline(voice.kind) && tracks.length > 0 && need === null;
      return isWaitedFor(need) || isUp ? voice.id : [];
    }),
  );
