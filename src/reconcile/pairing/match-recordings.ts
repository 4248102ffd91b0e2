import { workingHeader } from '../../day/header.ts';
import type { Day, TakeId } from '../../day/model.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { rateOfCard } from '../log-and-card/card-rate.ts';
import { type DayAxis, dayAxis, labelDayMs } from '../log-and-card/label-time.ts';
import { type Logged, loggedTakes } from '../log-and-card/logged.ts';
import { byTapeAndStart, recordedOf } from '../log-and-card/recorded.ts';
import { bestFit, type Fitted } from './best-fit.ts';
import { type Candidate, candidatePairs } from './candidates.ts';
import { fitClocks } from './clock-fit.ts';
import type { Reason, ToRecorder } from './score-pair.ts';

/** A recording that is a take's. */
export interface Pair {
  readonly take: TakeId;
  readonly recording: Recording;
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** What a take in question may have: a recording, or (null) none. */
export interface Choice {
  readonly recording: Recording | null;
  readonly points: number;
  readonly reasons: readonly Reason[];
  /** How many points worse than the best the whole would be with it; 0 for the best. */
  readonly loss: number;
}

/** A take for which several choices fit about as well: it is asked, not guessed. */
export interface Question {
  readonly take: TakeId;
  readonly choices: readonly Choice[];
}

export interface CardMatch {
  /** By tape, start and name. */
  readonly recordings: readonly Recording[];
  /** In the order of the day, as the others are. */
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  /** Takes that should have a recording and have none. MOS expects none. */
  readonly takesWithout: readonly TakeId[];
  /** Recordings that are no take's and in no question. */
  readonly recordingsWithout: readonly Recording[];
  /** Recordings that would be those of takes logged as MOS. */
  readonly recordedMos: readonly Pair[];
  /** The day laid out in a row, and where on it a label of the log stands by the recorder. */
  readonly axis: DayAxis;
  readonly toRecorder: ToRecorder;
}

/** A choice that costs the whole fewer points than this is as good as the best: a roll, or seven seconds of start. */
export const MARGIN_POINTS = 8;

/**
 * Which recording is which take's: by file name, scene and take, roll, start and length, the best fit of all together
 * rather than first come, whatever order the recordings come in. Where other choices are about as good, the take and
 * all it could have become a question.
 */
export function matchRecordings(day: Day, found: readonly Recording[]): CardMatch {
  const recordings = [...found].sort(byTapeAndStart);
  const recorded = recordings.map(recordedOf);
  const takes = loggedTakes(day);
  const sounding = takes.filter(({ take }) => take.kind !== 'mos');
  const axis = dayAxis(
    recorded.flatMap(({ startMs }) => (startMs === undefined ? [] : [startMs])),
    labelDayMs(workingHeader(day, rateOfCard(recordings)).timecodeRate),
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

/** Nobody reads more than these; they are the ones that cost least. */
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
  /** Places of recordings in a pair or a question. */
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
