import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import { byId } from '../facts/merge-facts.ts';
import { canonicalText } from '../facts/stored.ts';
import { counterOf, databaseOf } from '../shared/ids.ts';
import { hashOf, SUM_END } from './hash.ts';

/**
 * What a phone has of one database between two counters. Counters alone prove nothing: some are never used, two
 * windows of a database count side by side, and part of a damaged file leaves holes. So the number of entries and a
 * sum of their hashes go with it: equal sums mean equal entries, but for one chance in 2^48.
 */
export interface HeldRange {
  /** The last counter of the range, which begins above the one before. */
  readonly upTo: number;
  readonly count: number;
  readonly sum: number;
}

/** What a phone has of a day. */
export interface Have {
  /** Null where no day is open: then any day will do. */
  readonly day: DayId | null;
  /** The database of the phone that asks. */
  readonly from: string;
  /** By database, each in order of counters. */
  readonly held: ReadonlyMap<string, readonly HeldRange[]>;
}

/** More would make its code hard to read: older ranges are then wider, and what is not told is given again. */
const MOST_RANGES = 42;
/** Of the newest range; every second one is twice as large as those after it. */
const FIRST_SIZE = 4;

export const nothingHeld = (from: string): Have => ({ day: null, from, held: new Map() });

export function haveOf(day: DayId, from: string, facts: readonly Envelope[]): Have {
  const databases = [...byDatabase(facts)]
    .sort(([, one], [, other]) => other.length - one.length)
    .slice(0, MOST_RANGES);
  for (let size = FIRST_SIZE; ; size *= 4) {
    const held = new Map(databases.map(([database, own]) => [database, rangesOf(own, size)]));
    const ranges = [...held.values()].reduce((count, own) => count + own.length, 0);
    if (ranges <= MOST_RANGES) return { day, from, held };
  }
}

/**
 * The facts that the other phone is not proved to have, in order of ids. A range of its with another count or sum
 * than here is given whole: too much costs time, and nothing is ever missed.
 */
export function lackedBy<Stored extends Envelope>({ held }: Have, facts: readonly Stored[]): Stored[] {
  const lacked: Stored[] = [];
  for (const [database, own] of byDatabase(facts)) {
    let rest = own;
    for (const range of held.get(database) ?? []) {
      const inside = rest.filter(({ id }) => counterOf(id) <= range.upTo);
      rest = rest.slice(inside.length);
      if (inside.length !== range.count || sumOf(inside) !== range.sum) lacked.push(...inside);
    }
    lacked.push(...rest);
  }
  return lacked.sort(byId);
}

/** Each database's facts in order of ids. */
function byDatabase<Stored extends Envelope>(facts: readonly Stored[]): Map<string, Stored[]> {
  const sorted = new Map<string, Stored[]>();
  for (const fact of facts.toSorted(byId)) {
    const own = sorted.get(databaseOf(fact.id));
    if (own) own.push(fact);
    else sorted.set(databaseOf(fact.id), [fact]);
  }
  return sorted;
}

/** Narrow ranges for what is new, where phones differ, and wide ones for what is old. */
function rangesOf(facts: readonly Envelope[], firstSize: number): HeldRange[] {
  const ranges: HeldRange[] = [];
  let end = facts.length;
  for (let nth = 0; end > 0; nth += 1) {
    let begin = Math.max(0, end - firstSize * 2 ** Math.floor(nth / 2));
    // Two windows may have used one counter.
    while (begin > 0 && counterAt(facts, begin - 1) === counterAt(facts, begin)) begin -= 1;
    const inside = facts.slice(begin, end);
    ranges.unshift({ upTo: counterAt(facts, end - 1), count: inside.length, sum: sumOf(inside) });
    end = begin;
  }
  return ranges;
}

const counterAt = (facts: readonly Envelope[], at: number): number => counterOf(facts[at]!.id);

const sumOf = (facts: readonly Envelope[]): number =>
  facts.reduce((sum, fact) => (sum + hashOf(canonicalText(fact))) % SUM_END, 0);
