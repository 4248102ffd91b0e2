import { wornBy } from '../chain/links.ts';
import type { Need, Open, Part, PartId, Rig, VoiceId } from '../model.ts';
import type { Answers } from './answers.ts';
import type { VoiceAnswer, VoiceState } from './voice-answers.ts';

/** Why somebody may need a pack, most urgent first. */
export type Reason =
  | 'needed-unrecorded'
  | 'needed-muted'
  | 'needed-clash'
  | 'needed-ganged'
  | 'wears-nothing'
  | 'recorded'
  | 'resting'
  | 'done';

export interface VoiceOffer {
  readonly voice: VoiceAnswer;
  readonly reason: Reason;
}

const ORDER: readonly Reason[] = [
  'needed-unrecorded',
  'needed-muted',
  'needed-clash',
  'needed-ganged',
  'wears-nothing',
  'recorded',
  'resting',
  'done',
];

const NEEDED_AS: Partial<Record<VoiceState, Reason>> = {
  unrecorded: 'needed-unrecorded',
  off: 'needed-unrecorded',
  muted: 'needed-muted',
  clash: 'needed-clash',
  gang: 'needed-ganged',
};

function reasonFor({ state, need, paths }: VoiceAnswer): Reason {
  if (need === 'done') return 'done';
  if (need === 'resting') return 'resting';
  const pressing = need === 'needed' ? NEEDED_AS[state] : undefined;
  if (pressing) return pressing;
  return paths.some(({ transmitter }) => transmitter !== null) ? 'recorded' : 'wears-nothing';
}

/** Who could get this pack, with the reason, best first. Its wearer is left out. */
export function voicesToOffer(answers: Answers, transmitter: PartId): VoiceOffer[] {
  const wearer = wornBy(answers.links, transmitter)?.value;
  return answers.voices
    .filter(({ voice }) => voice.kind === 'performer' && voice.id !== wearer)
    .map((voice) => ({ voice, reason: reasonFor(voice) }))
    .sort(
      (a, b) =>
        ORDER.indexOf(a.reason) - ORDER.indexOf(b.reason) || a.voice.voice.priority - b.voice.voice.priority,
    );
}

export interface PackOffer {
  readonly transmitter: Part;
  /** Who wears it now, and whether they are needed. */
  readonly wearer: VoiceId | null;
  readonly wearerNeed: Open<Need> | null;
}

/** A need that only a newer version knows may be urgent. */
const NEED_ORDER: Readonly<Record<string, number>> = { done: 1, resting: 2, null: 3 };

/** Packs that could go on somebody: free ones first, then from whoever can best spare one. */
export function packsToOffer(rig: Rig, answers: Answers, voice: VoiceId): PackOffer[] {
  const needOf = new Map(answers.voices.map((answer) => [answer.voice.id, answer.need]));
  const rank = ({ wearer, wearerNeed }: PackOffer): number =>
    wearer === null ? 0 : (NEED_ORDER[wearerNeed ?? 'null'] ?? 4);
  return rig.transmitters
    .map((transmitter): PackOffer => {
      const wearer = wornBy(answers.links, transmitter.id)?.value ?? null;
      return { transmitter, wearer, wearerNeed: wearer ? (needOf.get(wearer) ?? null) : null };
    })
    .filter(({ wearer }) => wearer !== voice)
    .sort((a, b) => rank(a) - rank(b) || a.transmitter.order - b.transmitter.order);
}
