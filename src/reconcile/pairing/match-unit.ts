import type { Day, PartId, TakeId } from '../../day/model.ts';
import { workingNow } from '../../day/settings/settings.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { rateOfCard } from '../log-and-card/card-rate.ts';
import { type DayAxis, dayAxis, labelDayMs } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import { byTapeAndStart, inOrderOfRecording, type Recorded, recordedOf } from '../log-and-card/recorded.ts';
import { bestFit, type Fitted } from './best-fit.ts';
import { type Candidate, candidatePairs } from './candidates.ts';
import { type CardHabits, habitsOf } from './card-habits.ts';
import { fitClocks } from './clock-fit.ts';
import { MARGIN_BITS, type ToRecorder } from './likelihood.ts';
import { TOGETHER_MS } from './one-name.ts';
import { trackEvidence } from './track-evidence.ts';

/** A take and its recording. */
export interface Pair {
  readonly take: TakeId;
  readonly recording: Recording;
  /** How far the evidence speaks for it. */
  readonly bits: number;
  /** Whose card the recording is on, if the day has several recorders. */
  readonly recorder?: PartId;
}

/** A candidate for a take in question: a recording, or (null) none. */
export interface Choice {
  readonly recording: Recording | null;
  readonly bits: number;
  /** How many bits worse than the best the total would be with it; 0 for the best. */
  readonly loss: number;
}

/** A take for which several choices fit about equally: the user is asked. */
export interface Question {
  readonly take: TakeId;
  readonly choices: readonly Choice[];
}

/** What is on the cards of one recorder. */
export interface UnitMatch {
  /** By tape, start and name. */
  readonly recordings: readonly Recording[];
  /** In the order of the day, like the others. */
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  /** Takes that should have a recording but have none. MOS expects none. */
  readonly takesWithout: readonly TakeId[];
  /** Recordings that belong to no take and no question. */
  readonly recordingsWithout: readonly Recording[];
  /** Recordings of the same sound as one that has a take: a second recorder of the same name. */
  readonly alsoThere: readonly Recording[];
  /** Recordings that fit takes logged as MOS. */
  readonly recordedMos: readonly Pair[];
  /** The day as a line, and where the recorder puts a label of the log on it. */
  readonly axis: DayAxis;
  readonly toRecorder: ToRecorder;
  readonly habits: CardHabits;
  /** The place of every take on the line. */
  readonly order: ReadonlyMap<TakeId, number>;
}

/**
 * Matches recordings with takes by start, length, order, names of tracks, file name, scene, take and roll: the
 * best overall fit rather than first come, in whatever order the recordings are given. If other choices are
 * about as good, the take and its candidates become a question.
 */
export function matchUnit(
  day: Day,
  takes: readonly Logged[],
  found: readonly Recording[],
  recorder?: PartId,
): UnitMatch {
  const recordings = [...found].sort(byTapeAndStart);
  const plain = recordings.map(recordedOf);
  const sounding = takes.filter(({ take }) => take.kind !== 'mos');
  const axis = dayAxis(
    plain.flatMap(({ startMs }) => (startMs === undefined ? [] : [startMs])),
    labelDayMs(workingNow(day, rateOfCard(recordings), recorder).timecodeRate),
  );
  const recorded = inOrderOfRecording(plain, axis);
  const toRecorder = fitClocks(sounding, recorded, axis);
  const habits = habitsOf(sounding, recorded);
  const evidence = { habits, toRecorder, axis, tracks: trackEvidence(day, recorded, recorder) };
  const candidates = candidatePairs(sounding, recorded, evidence);
  const sorted = sortOut({ takes: sounding, recorded, candidates, habits }, bestFit(candidates));
  const paired = sorted.pairs.map(({ recording }) => recordedOf(recording));
  const rest = recorded.filter((_, at) => !sorted.placed.has(at));
  const again = new Set(rest.filter((one) => paired.some((other) => isSameSound(one, other, habits))));
  const leftOver = rest.filter((one) => !again.has(one));
  const silent = takes.filter(({ take }) => take.kind === 'mos');
  const fitMos = candidatePairs(silent, leftOver, evidence);
  const recordedMos = sortOut(
    { takes: silent, recorded: leftOver, candidates: fitMos, habits },
    bestFit(fitMos),
  ).pairs;
  const mos = new Set(recordedMos.map(({ recording }) => recording));
  const alsoThere = [...sorted.again, ...[...again].map(({ recording }) => recording)];
  return {
    recordings: recordings.filter((one) => !alsoThere.includes(one)),
    alsoThere,
    pairs: sorted.pairs,
    questions: sorted.questions,
    takesWithout: sorted.takesWithout,
    recordingsWithout: leftOver.map(({ recording }) => recording).filter((one) => !mos.has(one)),
    recordedMos,
    axis,
    toRecorder,
    habits,
    order: new Map(takes.map(({ take }, at) => [take.id, at])),
  };
}

/** Nobody reads more than these; the cheapest are kept. */
const MOST_CHOICES = 20;

interface Parts {
  readonly takes: readonly Logged[];
  readonly recorded: readonly Recorded[];
  readonly candidates: readonly Candidate[];
  readonly habits: CardHabits;
}

interface SortedOut {
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  readonly takesWithout: readonly TakeId[];
  /** Indexes of recordings in a pair or a question. */
  readonly placed: ReadonlySet<number>;
  /** Of these, the same sound as the one that was chosen. */
  readonly again: readonly Recording[];
}

function sortOut({ takes, recorded, candidates, habits }: Parts, fitted: readonly Fitted[]): SortedOut {
  const bitsOf = new Map(candidates.map(({ take, recording, bits }) => [`${take}/${recording}`, bits]));
  const byTake = new Map(fitted.map((one) => [one.take, one]));
  const placed = new Set<number>();
  const pairs: Pair[] = [];
  const questions: Question[] = [];
  const takesWithout: TakeId[] = [];
  const again: Recording[] = [];
  const isAgain = (best: number | null, other: number | null): boolean =>
    best !== null && other !== null && isSameSound(recorded[best]!, recorded[other]!, habits);
  for (const [at, { take }] of takes.entries()) {
    const fit = byTake.get(at) ?? { take: at, recording: null, others: [] };
    const near = fit.others.filter(({ loss }) => loss < MARGIN_BITS);
    const close = near.filter((one) => !isAgain(fit.recording, one.recording));
    for (const { recording } of near)
      if (isAgain(fit.recording, recording) && !placed.has(recording!)) {
        placed.add(recording!);
        again.push(recorded[recording!]!.recording);
      }
    const choices = [{ recording: fit.recording, loss: 0 }, ...close].map(({ recording, loss }): Choice => {
      if (recording === null) return { recording, bits: 0, loss };
      placed.add(recording);
      const bits = bitsOf.get(`${at}/${recording}`)!;
      return { recording: recorded[recording]!.recording, bits, loss };
    });
    const [best] = choices;
    if (choices.length > 1) questions.push({ take: take.id, choices: choices.slice(0, MOST_CHOICES) });
    else if (best?.recording) {
      pairs.push({ take: take.id, recording: best.recording, bits: best.bits });
    } else takesWithout.push(take.id);
  }
  return { pairs, questions, takesWithout, placed, again };
}

/** Without timecode the slate has to tell, where it is the recorder's at every take. */
const isSameSound = (a: Recorded, b: Recorded, { numbers }: CardHabits): boolean =>
  isNear(a.lengthMs, b.lengthMs) &&
  (a.startMs === undefined || b.startMs === undefined
    ? numbers.only === undefined && isGiven(a.number, b.number) && isGiven(a.scene, b.scene)
    : isNear(a.startMs, b.startMs));

const isGiven = <Value>(a: Value | undefined, b: Value | undefined): boolean => a !== undefined && a === b;

const isNear = (a: number | undefined, b: number | undefined): boolean =>
  a !== undefined && b !== undefined && Math.abs(a - b) <= TOGETHER_MS;
