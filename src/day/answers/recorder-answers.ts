import { asBefore } from '../../shared/as-before.ts';
import { rollingIn } from '../chain/links.ts';
import type { Part, PartId, Voice } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import { recorderIds, recordsAs, rollingIds } from '../recorders/recorder-ids.ts';
import { leadsAt } from '../recorders/recorder-leads.ts';
import type { InputAnswer } from './input-answers.ts';
import { heardOrNot, type Summary, summaryOf } from './summary.ts';
import type { TrackAnswer } from './track-answers.ts';
import {
  isHeard,
  type Path,
  radioPaths,
  type VoiceAnswer,
  voiceAnswer,
  type Wiring,
} from './voice-answers.ts';

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

/** A voice of the cast, with its radio paths as far as they are the same for all recorders. */
interface Wired {
  readonly voice: Voice;
  readonly radio: readonly Path[];
}

type Parts = Pick<RecorderAnswers, 'inputs' | 'tracks'>;
type Alone = Omit<RecorderAnswers, 'recorder' | 'rolls'>;

/** The answers of each recorder. Those that record the same inputs and tracks share theirs, and share with those `before`. */
export function recorderAnswers(
  wiring: Wiring,
  whole: Parts,
  before: readonly RecorderAnswers[] = [],
): RecorderAnswers[] {
  const { ends, chain } = wiring;
  const { rig } = ends;
  const rolling = rollingIds(rig, rollingIn(chain)?.value);
  const cast = [...ends.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice): Wired => ({ voice, radio: radioPaths(ends, chain, voice.id) }));
  const known = new Map<PartId, Alone>();
  return recorderIds(rig).map((recorder, at) => {
    const as = recordsAs(rig, recorder);
    const answers = known.get(as) ?? answersAs(wiring, cast, whole, as, before[at]);
    known.set(as, answers);
    return { recorder, rolls: rolling.includes(recorder), ...answers };
  });
}

function answersAs(
  wiring: Wiring,
  cast: readonly Wired[],
  whole: Parts,
  recorder: PartId,
  before: Alone | undefined,
): Alone {
  const inputs = belonging(whole.inputs, ({ input }) => input, recorder, before?.inputs);
  const tracks = belonging(whole.tracks, ({ track }) => track, recorder, before?.tracks);
  const isAlone = inputs === whole.inputs && tracks === whole.tracks;
  const { ends, leadsFrom } = wiring;
  const there = isAlone
    ? wiring
    : { ...wiring, leadsFrom: (end: string) => leadsAt(ends.rig, leadsFrom(end), recorder) };
  const voices = asBefore(
    cast.map(({ voice, radio }) => rolled(voiceAnswer(there, voice, radio))),
    before?.voices,
  );
  return { inputs, tracks, voices, summary: summaryOf(inputs, tracks, voices) };
}

/** The answers of one recorder's parts: the list itself if that is all of them. */
function belonging<Answer>(
  answers: readonly Answer[],
  partOf: (answer: Answer) => Part,
  recorder: PartId,
  before: readonly Answer[] | undefined,
): readonly Answer[] {
  const own = answers.filter((answer) => recorderOfPart(partOf(answer)) === recorder);
  return own.length === answers.length ? answers : asBefore(own, before);
}

const rolled = (answer: VoiceAnswer): RolledVoice => ({
  ...answer,
  heardOn: isHeard(answer) ? 'main' : 'none',
});

/** The voices on the recorders that roll, `rolling` beginning with the main one. */
export function rolledVoices(rolling: readonly RecorderAnswers[]): readonly RolledVoice[] {
  const [main, ...backups] = [...new Set(rolling.map(({ voices }) => voices))];
  if (backups.length === 0) return main as readonly RolledVoice[];
  return main!.map((answer, at) =>
    onAny(
      answer,
      backups.map((voices) => voices[at]!),
    ),
  );
}

/** Where nobody hears somebody: arriving muted anywhere is being muted, and waiting anywhere is waiting. */
const NOT_HEARD = ['muted', 'unrecorded'] as const;

function onAny(main: VoiceAnswer, backups: readonly VoiceAnswer[]): RolledVoice {
  const all = [main, ...backups];
  const heard = all.find(isHeard);
  const says = heard ?? NOT_HEARD.flatMap((state) => all.find((one) => one.state === state) ?? [])[0] ?? main;
  return {
    ...main,
    state: says.state,
    tracks: [...new Set(all.flatMap(({ tracks }) => tracks))],
    paths: [...main.paths, ...backups.flatMap(({ paths }) => paths.filter(({ input }) => input !== null))],
    heardOn: heard === main ? 'main' : heard ? 'backup' : 'none',
  };
}

/** What must be known of all that roll: the main one's counts, with the worst of any. */
export const worstOf = (rolling: readonly RecorderAnswers[], voices: readonly RolledVoice[]): Summary =>
  rolling.length === 1
    ? rolling[0]!.summary
    : {
        ...rolling[0]!.summary,
        ...heardOrNot(voices),
        clashes: Math.max(...rolling.map(({ summary }) => summary.clashes)),
      };
