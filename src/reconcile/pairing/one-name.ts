import type { Recording } from '../../wave/recording/recordings.ts';
import { dayAxis } from '../log-and-card/label-time.ts';
import { type Recorded, recordedOf } from '../log-and-card/recorded.ts';

/** Two recorders that roll together start and stop so close to one another (common practice, no source). */
export const TOGETHER_MS = 2000;

/** Fewer are by chance; of a backup that rolled now and then half of all are in pairs. */
const LEAST_PAIRS = 3;
const LEAST_SHARE = 0.5;
/** Takes at regular intervals are each before one and after another; of two recorders hardly any is. */
const MOST_BOTH = 0.1;

/** Of so many that are as long, more tell nothing, and a hostile card must end. */
const MOST_AS_LONG = 200;

const CLOCK_DAY_MS = 86_400_000;

/** A recording and one as long a certain time later. */
interface Couple {
  readonly early: Recorded;
  readonly late: Recorded;
  readonly apartMs: number;
}

/**
 * The recordings of two recorders with one name that rolled together while their clocks were apart: each has
 * what the other has, as long, always the same time later. All in one if that is not so.
 */
export function recordersOfOneName(recordings: readonly Recording[]): Recording[][] {
  const recorded = recordings.map(recordedOf);
  const couples = commonest(couplesOf(recorded));
  const early = new Set(couples.map((one) => one.early));
  const late = new Set(couples.map((one) => one.late));
  const both = [...early].filter((one) => late.has(one));
  const isTwo =
    couples.length >= LEAST_PAIRS &&
    early.size + late.size >= LEAST_SHARE * recorded.length &&
    both.length <= MOST_BOTH * couples.length;
  if (!isTwo) return [[...recordings]];
  const [first, second] = [[...early], [...late]];
  const isSecond = (one: Recorded): boolean =>
    late.has(one) || (!early.has(one) && likeness(one, second) > likeness(one, first));
  return [false, true].map((side) =>
    recorded.filter((one) => isSecond(one) === side).map(({ recording }) => recording),
  );
}

function couplesOf(recorded: readonly Recorded[]): Couple[] {
  const { at } = dayAxis(
    recorded.flatMap(({ startMs }) => startMs ?? []),
    CLOCK_DAY_MS,
  );
  const timed = recorded
    .flatMap((one) =>
      one.startMs === undefined || one.lengthMs === undefined
        ? []
        : [{ one, from: at(one.startMs), long: one.lengthMs }],
    )
    .sort((a, b) => a.long - b.long);
  const couples: Couple[] = [];
  for (const [index, a] of timed.entries()) {
    for (const b of timed.slice(index + 1, index + 1 + MOST_AS_LONG)) {
      if (b.long - a.long > TOGETHER_MS) break;
      const [early, late] = a.from < b.from ? [a, b] : [b, a];
      const apartMs = late.from - early.from;
      // Nearer ones are told from each other by their starts.
      if (apartMs > TOGETHER_MS) couples.push({ early: early.one, late: late.one, apartMs });
    }
  }
  return couples.sort((a, b) => a.apartMs - b.apartMs);
}

/** The most couples that are equally far apart. */
function commonest(couples: readonly Couple[]): readonly Couple[] {
  let best = { from: 0, to: 0 };
  for (let from = 0, to = 0; from < couples.length; from += 1) {
    while (to < couples.length && couples[to]!.apartMs - couples[from]!.apartMs <= TOGETHER_MS) to += 1;
    if (to - from > best.to - best.from) best = { from, to };
  }
  return couples.slice(best.from, best.to);
}

/** How much a recording without a counterpart looks like those of one recorder. */
const likeness = (one: Recorded, others: readonly Recorded[]): number =>
  MARKS.reduce((sum, mark) => sum + others.filter((other) => mark(other) === mark(one)).length, 0);

const MARKS: readonly ((recorded: Recorded) => string)[] = [
  ({ recording }) => recording.files[0]!.name.replaceAll(/\d+/g, ''),
  ({ roll = '' }) => roll,
  ({ trackKey }) => trackKey,
];
