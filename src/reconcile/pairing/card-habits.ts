import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';

/** How often the values of one field are on the card. */
export interface Shares<Value> {
  /** The one value of the card: a field that never changes speaks neither for nor against. */
  readonly only: Value | undefined;
  readonly shareOf: (value: Value) => number;
}

/** What a recorder does at every take: fields left at their defaults tell no take from another. */
export interface CardHabits {
  readonly scenes: Shares<string>;
  readonly numbers: Shares<number>;
  readonly rolls: Shares<string>;
  /** The take numbers run through from first to last, whatever the slate. */
  readonly numbersRun: boolean;
}

/** Two recordings of one slate are nothing unusual. */
const LEAST_RECORDINGS = 3;
/** On a long card a few files of another unit or day do not make a field change. */
const MANY = 10;
const NEARLY_ALL = 0.9;
const LEAST_RUN = 6;
/** A counter may skip what was deleted. */
const RUN_SHARE = 0.8;
/** As if so many more recordings had been seen, a tenth of them with this value: a short card proves little. */
const PRIOR = { recordings: 5, share: 0.1 } as const;

/** `recorded` in the order in which they were recorded, as far as that is known. */
export function habitsOf(takes: readonly Logged[], recorded: readonly Recorded[]): CardHabits {
  const numbers = recorded.map(({ number }) => number);
  return {
    scenes: sharesOf(recorded.map(({ scene }) => scene)),
    rolls: sharesOf(recorded.map(({ roll }) => roll)),
    numbers: sharesOf(numbers),
    numbersRun: isRun(numbers) && !isRun(takes.map(({ take }) => take.number)),
  };
}

function sharesOf<Value>(values: readonly (Value | undefined)[]): Shares<Value> {
  const counts = countsOf(values);
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const { recordings, share } = PRIOR;
  return {
    only: onlyOf(counts, all),
    // Of one or two recordings no share can be told.
    shareOf: (value) =>
      all < LEAST_RECORDINGS ? share : ((counts.get(value) ?? 0) + recordings * share) / (all + recordings),
  };
}

function countsOf<Value>(values: readonly (Value | undefined)[]): Map<Value, number> {
  const counts = new Map<Value, number>();
  for (const value of values) if (value !== undefined) counts.set(value, (counts.get(value) ?? 0) + 1);
  return counts;
}

function onlyOf<Value>(counts: ReadonlyMap<Value, number>, all: number): Value | undefined {
  if (all < LEAST_RECORDINGS) return undefined;
  return [...counts].find(([, count]) => count === all || (all >= MANY && count >= NEARLY_ALL * all))?.[0];
}

/** Mostly one more than the one before, and hardly a number twice. */
function isRun(numbers: readonly (number | undefined)[]): boolean {
  const said = numbers.filter((number) => number !== undefined);
  const steps = said.slice(1).filter((number, at) => number === said[at]! + 1).length;
  const different = new Set(said).size;
  return (
    said.length >= LEAST_RUN &&
    steps >= RUN_SHARE * (said.length - 1) &&
    different >= NEARLY_ALL * said.length
  );
}
