import { generateDay } from '../../../sample-days/generate.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { appendFacts, foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { readFact } from '../../../src/facts/fact.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { matchRecordings } from '../../../src/reconcile/pairing/match-recordings.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { idSource } from '../../../src/shared/ids.ts';
import { planNextSetup } from '../../plan/at-once.ts';
import { cardOf, recordCard } from '../../reconcile/build-card.ts';
import { filmDay } from '../../reconcile/film-day.ts';
import { medianMs } from '../row.ts';
import type { Growth, Series } from './series.ts';

const SEED = 9;
const RUNS = 9;

function series(work: string, sizes: readonly number[], costAt: (size: number) => number): Series {
  // Once before it counts, or the smallest size would pay for warming up.
  costAt(sizes[0]!);
  return { work, unit: 'ms', points: sizes.map((size) => ({ size, cost: costAt(size) })) };
}

/** A tap: one more fact, and every answer that the first screen shows. */
function tapOn(day: Day): number {
  let now = day;
  const ids = idSource('benchmarker', 400_000_000);
  let muted = false;
  return medianMs(101, () => {
    muted = !muted;
    const said = stampFacts([{ kind: 'mute-set', what: 'input', part: 'in2', muted }], {
      day: now.id,
      at: 0,
      zone: 0,
      nextId: ids.next,
    });
    now = appendFacts(now, said);
    answersNow(now);
  });
}

const everyAnswer = (day: Day): void => {
  day.memory.answersOf = {};
  for (const { id } of takesInOrder(day)) answersAtTake(day, id);
};

export function growthInTakes(): Growth {
  const sizes = [50, 100, 200, 400, 800];
  const made = new Map(
    sizes.map((takes) => [takes, generateDay({ seed: SEED, takes, tracks: 16, performers: 12 })]),
  );
  const fold = (takes: number): Day => foldDay(made.get(takes)!.day, made.get(takes)!.facts);
  return {
    of: 'takes',
    with: '16 tracks, 12 performers, three changes before every take',
    series: [
      series('a tap and what it shows', sizes, (takes) => tapOn(fold(takes))),
      series('folding the day', sizes, (takes) => medianMs(RUNS, () => fold(takes))),
      series('answers of every take', sizes, (takes) => {
        const day = fold(takes);
        return medianMs(RUNS, () => everyAnswer(day));
      }),
      series('report, from nothing', sizes, (takes) => {
        const days = Array.from({ length: RUNS + 1 }, () => fold(takes));
        return medianMs(RUNS, () => reportText(reportOf(days.pop()!)));
      }),
    ],
  };
}

export function growthInTracks(): Growth {
  const sizes = [8, 16, 32, 64];
  // More than 40 voices at once the planner refuses, in words.
  const plannable = [8, 16, 32];
  const fold = (tracks: number): Day => {
    const made = generateDay({ seed: SEED, takes: 200, tracks, performers: tracks - 2 });
    return foldDay(made.day, made.facts);
  };
  return {
    of: 'tracks',
    with: '200 takes, a performer with a pack on every track but two',
    series: [
      series('a tap and what it shows', sizes, (tracks) => tapOn(fold(tracks))),
      series('answers of every take', sizes, (tracks) => {
        const day = fold(tracks);
        return medianMs(RUNS, () => everyAnswer(day));
      }),
      series('planning the next setup', plannable, (tracks) => {
        const day = fold(tracks);
        return medianMs(RUNS, () => {
          const plan = planNextSetup(problemOf(day, new Set(day.voices.keys())));
          if (!plan.ok) throw new Error(`No plan for ${tracks} tracks: ${plan.problem.code}`);
        });
      }),
    ],
  };
}

export function growthInFacts(): Growth {
  const sizes = [1_000, 3_000, 10_000, 30_000, 100_000];
  const made = new Map(
    sizes.map((facts) => {
      const takes = Math.floor(facts / 8);
      return [facts, generateDay({ seed: SEED, takes, tracks: 16, performers: 12, facts })];
    }),
  );
  const fold = (facts: number): Day => foldDay(made.get(facts)!.day, made.get(facts)!.facts);
  return {
    of: 'facts',
    with: 'one take in eight of them',
    series: [
      series('checking them', sizes, (facts) => medianMs(5, () => made.get(facts)!.facts.map(readFact))),
      series('folding them', sizes, (facts) => medianMs(5, () => fold(facts))),
      series('one more of them', sizes, (facts) => tapOn(fold(facts))),
    ],
  };
}

export async function growthInFiles(): Promise<Growth> {
  const sizes = [50, 100, 200, 400, 800];
  const points: Series['points'][number][] = [];
  for (const files of sizes) {
    const filmed = filmDay({ takes: files, seed: 1, fromHour: 4 });
    const recordings = await recordCard(cardOf(filmed.day()));
    const cost = medianMs(RUNS, () => matchRecordings(foldDay('day-1', filmed.phone.facts), recordings));
    points.push({ size: files, cost });
  }
  return {
    of: 'files on the card',
    with: 'a take to each, clocks that agree',
    series: [{ work: 'matching them to the log', unit: 'ms', points }],
  };
}
