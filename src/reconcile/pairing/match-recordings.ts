import type { Day, TakeId } from '../../day/model.ts';
import { workingNow } from '../../day/settings/settings.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { rateOfCard } from '../log-and-card/card-rate.ts';
import { type DayAxis, dayAxis, labelDayMs } from '../log-and-card/label-time.ts';
import { type Logged, loggedTakes } from '../log-and-card/logged.ts';
import { byTapeAndStart, recordedOf } from '../log-and-card/recorded.ts';
import { bestFit, type Fitted } from './best-fit.ts';
import { type Candidate, candidatePairs } from './candidates.ts';
import { fitClocks } from './clock-fit.ts';
import type { Reason, ToRecorder } from './score-pair.ts';

/** A take and its recording. */
export interface Pair {
  readonly take: TakeId;
  readonly recording: Recording;
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** A candidate for a take in question: a recording, or (null) none. */
export interface Choice {
  readonly recording: Recording | null;
  readonly points: number;
  readonly reasons: readonly Reason[];
  /** How many points worse than the best the total would be with it; 0 for the best. */
  readonly loss: number;
}

/** A take for which several choices fit about equally: the user is asked. */
export interface Question {
  readonly take: TakeId;
  readonly choices: readonly Choice[];
}

export interface CardMatch {
  /** By tape, start and name. */
  readonly recordings: readonly Recording[];
  /** In the order of the day, like the others. */
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  /** Takes that should have a recording but have none. MOS expects none. */
  readonly takesWithout: readonly TakeId[];
  /** Recordings that belong to no take and no question. */
  readonly recordingsWithout: readonly Recording[];
  /** Recordings that fit takes logged as MOS. */
  readonly recordedMos: readonly Pair[];
  /** The day as a line, and where the recorder puts a label of the log on it. */
  readonly axis: DayAxis;
  readonly toRecorder: ToRecorder;
}

/** A choice this close to the best counts as equally good: a roll, or seven seconds of start. */
export const MARGIN_POINTS = 8;

/**
 * Matches recordings with takes by file name, scene and take, roll, start and length: the best overall fit
 * rather than first come, in whatever order the recordings are given. If other choices are about as good, the
 * take and its candidates become a question.
 */
export function matchRecordings(day: Day, found: readonly Recording[]): CardMatch {
  const recordings = [...found].sort(byTapeAndStart);
  const recorded = recordings.map(recordedOf);
  const takes = loggedTakes(day);
  const sounding = takes.filter(({ take }) => take.kind !== 'mos');
  const axis = dayAxis(
    recorded.flatMap(({ startMs }) => (startMs === undefined ? [] : [startMs])),
    labelDayMs(workingNow(day, rateOfCard(recordings)).timecodeRate),
  );
  const toRecorder = fitClocks(sounding, recorded, axis);
  const candidates = candidatePairs(sounding, recorded, toRecorder, axis);
  const parts = { takes: sounding, recordings, candidates };
  const sorted = sortOut(parts, bestFit(candidates));
  const leftOver = recordings.filter((_, at) => !sorted.placed.has(at));
  const silent = takes.filter(({ take }) => take.kind === 'mos');
  const fitMos = candidatePairs(silent, leftOver.map(recordedOf), toRecorder, axis);
  const recordedMos = sortOut(
    { takes: silent, recordings: leftOver, candidates: fitMos },
    bestFit(fitMos),
  ).pairs;
  const mos = new Set(recordedMos.map(({ recording }) => recording));
  return {
    recordings,
    pairs: sorted.pairs,
    questions: sorted.questions,
    takesWithout: sorted.takesWithout,
    recordingsWithout: leftOver.filter((one) => !mos.has(one)),
    recordedMos,
    axis,
    toRecorder,
  };
}

/** Nobody reads more than these; the cheapest are kept. */
const MOST_CHOICES = 20;

interface Parts {
  readonly takes: readonly Logged[];
  readonly recordings: readonly Recording[];
  readonly candidates: readonly Candidate[];
}

interface SortedOut {
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  readonly takesWithout: readonly TakeId[];
  /** Indexes of recordings in a pair or a question. */
  readonly placed: ReadonlySet<number>;
}

function sortOut({ takes, recordings, candidates }: Parts, fitted: readonly Fitted[]): SortedOut {
  const scores = new Map(candidates.map(({ take, recording, score }) => [`${take}/${recording}`, score]));
  const byTake = new Map(fitted.map((one) => [one.take, one]));
  const placed = new Set<number>();
  const pairs: Pair[] = [];
  const questions: Question[] = [];
  const takesWithout: TakeId[] = [];
  for (const [at, { take }] of takes.entries()) {
    const fit = byTake.get(at) ?? { take: at, recording: null, others: [] };
    const close = fit.others.filter(({ loss }) => loss < MARGIN_POINTS);
    const choices = [{ recording: fit.recording, loss: 0 }, ...close].map(({ recording, loss }): Choice => {
      if (recording === null) return { recording, points: 0, reasons: [], loss };
      placed.add(recording);
      return { recording: recordings[recording]!, ...scores.get(`${at}/${recording}`)!, loss };
    });
    const [best] = choices;
    if (choices.length > 1) questions.push({ take: take.id, choices: choices.slice(0, MOST_CHOICES) });
    else if (best?.recording) {
      const { recording, points, reasons } = best;
      pairs.push({ take: take.id, recording, points, reasons });
    } else takesWithout.push(take.id);
  }
  return { pairs, questions, takesWithout, placed };
}
