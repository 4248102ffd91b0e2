import { rollingIn } from '../chain/links.ts';
import type { PartId, Rig } from '../model.ts';
import { leadsAt } from '../recorders/recorder-leads.ts';
import { inputsOf, recorderIds, recordsAs, rollingIds, tracksOf } from '../recorders/recorder-parts.ts';
import type { InputAnswer } from './input-answers.ts';
import { heardOrNot, type Summary, summaryOf } from './summary.ts';
import type { TrackAnswer } from './track-answers.ts';
import { isHeard, type VoiceAnswer, voiceAnswer, type Wiring } from './voice-answers.ts';

/** The answers as one recorder has them, whether it rolls or not. */
export interface RecorderAnswers {
  readonly recorder: PartId;
  /** Whether it rolls here. */
  readonly rolls: boolean;
  readonly inputs: readonly InputAnswer[];
  readonly tracks: readonly TrackAnswer[];
  readonly voices: readonly VoiceAnswer[];
  readonly summary: Summary;
}

/** Which of the recorders that roll hears a voice: the main one, only another, or none. */
export type HeardOn = 'main' | 'backup' | 'none';

/** A voice on the recorders that roll: as the main one has it, or a backup where the main one does not. */
export interface RolledVoice extends VoiceAnswer {
  readonly heardOn: HeardOn;
}

type Whole = Pick<RecorderAnswers, 'inputs' | 'tracks'>;

/** The answers of each recorder. Those that record the same inputs and tracks share theirs. */
export function recorderAnswers(wiring: Wiring, whole: Whole): RecorderAnswers[] {
  const { rig } = wiring.ends;
  const rolling = rollingIds(rig, rollingIn(wiring.chain)?.value);
  const known = new Map<PartId, Omit<RecorderAnswers, 'recorder' | 'rolls'>>();
  return recorderIds(rig).map((recorder) => {
    const as = recordsAs(rig, recorder);
    const answers = known.get(as) ?? answersAs(wiring, whole, as);
    known.set(as, answers);
    return { recorder, rolls: rolling.includes(recorder), ...answers };
  });
}

function answersAs(wiring: Wiring, whole: Whole, recorder: PartId) {
  const { rig } = wiring.ends;
  const inputs = ofParts(whole.inputs, rig.inputs, inputsOf(rig, recorder), ({ input }) => input.id);
  const tracks = ofParts(whole.tracks, rig.tracks, tracksOf(rig, recorder), ({ track }) => track.id);
  const isAlone = inputs === whole.inputs && tracks === whole.tracks;
  const there = isAlone ? wiring : wiringAt(wiring, rig, recorder);
  const voices = [...wiring.ends.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice) => rolledAlone(voiceAnswer(there, voice)));
  return { inputs, tracks, voices, summary: summaryOf(inputs, tracks, voices) };
}

/** The answers of some of the parts: the list itself if that is all of them. */
function ofParts<Answer>(
  answers: readonly Answer[],
  all: readonly { readonly id: PartId }[],
  some: readonly { readonly id: PartId }[],
  idOf: (answer: Answer) => PartId,
): readonly Answer[] {
  if (some === all) return answers;
  const ids = new Set(some.map(({ id }) => id));
  return answers.filter((answer) => ids.has(idOf(answer)));
}

const wiringAt = (wiring: Wiring, rig: Rig, recorder: PartId): Wiring => ({
  ...wiring,
  leadsFrom: (end) => leadsAt(rig, wiring.leadsFrom(end), recorder),
});

const rolledAlone = (answer: VoiceAnswer): RolledVoice => ({
  ...answer,
  heardOn: isHeard(answer) ? 'main' : 'none',
});

/** The voices on the recorders that roll, `rolling` beginning with the main one. */
export function rolledVoices(rolling: readonly RecorderAnswers[]): readonly RolledVoice[] {
  const [main, ...backups] = [...new Set(rolling.map(({ voices }) => voices))];
  if (backups.length === 0) return main as readonly RolledVoice[];
  return main!.map((answer, at) =>
    rolledVoice(
      answer,
      backups.map((voices) => voices[at]!),
    ),
  );
}

/** Where nobody hears somebody: arriving muted anywhere is being muted, and waiting anywhere is waiting. */
const NOT_HEARD = ['muted', 'unrecorded'] as const;

function rolledVoice(main: VoiceAnswer, backups: readonly VoiceAnswer[]): RolledVoice {
  const all = [main, ...backups];
  const heard = all.find(isHeard);
  const says = heard ?? NOT_HEARD.flatMap((state) => all.find((one) => one.state === state) ?? [])[0] ?? main;
  return {
    ...main,
    state: says.state,
    tracks: [...new Set(all.flatMap(({ tracks }) => tracks))],
    paths: [...main.paths, ...backups.flatMap(({ paths }) => paths.filter(({ input }) => input !== null))],
    heardOn: heard === undefined ? 'none' : heard === main ? 'main' : 'backup',
  };
}

/** What must be known of all that roll: the main one's counts, with the worst of any. */
export function worstOf(rolling: readonly RecorderAnswers[], voices: readonly RolledVoice[]): Summary {
  const { summary } = rolling[0]!;
  if (rolling.every((one) => one.summary === summary)) return summary;
  return {
    ...summary,
    ...heardOrNot(voices),
    clashes: Math.max(...rolling.map((one) => one.summary.clashes)),
  };
}

type OfRecorders = { readonly recorders: readonly RecorderAnswers[] };

/** Each list of the recorders that roll once: two that record the same share theirs. */
function ofRolling<Answer>(
  { recorders }: OfRecorders,
  listOf: (one: RecorderAnswers) => readonly Answer[],
): readonly Answer[] {
  const lists = [...new Set(recorders.filter(({ rolls }) => rolls).map(listOf))];
  return lists.length === 1 ? lists[0]! : lists.flat();
}

/** The tracks of the recorders that roll, the main one's first. */
export const rolledTracks = (answers: OfRecorders): readonly TrackAnswer[] =>
  ofRolling(answers, ({ tracks }) => tracks);

/** The inputs of the recorders that roll, the main one's first. */
export const rolledInputs = (answers: OfRecorders): readonly InputAnswer[] =>
  ofRolling(answers, ({ inputs }) => inputs);

/** Whether a recorder that rolls has this track. */
export const isTrackRolled = (answers: OfRecorders, track: PartId): boolean =>
  rolledTracks(answers).some((one) => one.track.id === track);
