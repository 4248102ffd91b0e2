import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { counterOf, databaseOf, idSource } from '../../src/shared/ids.ts';
import { timeOfDayClock } from '../../src/time/followed-clock.ts';

/** Every order in which three phones can come together. */
export const ORDERS_OF_THREE = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

const DAY_ID = 'day-1';
const NAMES = ['phonea', 'phoneb', 'phonec', 'phoned'];

/** A phone on a set where the true time is known: its clock is off by so many ms, and it knows what it was given. */
export class SetPhone {
  readonly facts: Fact[] = [];
  readonly #ids;
  readonly database: string;
  readonly #aheadMs: number;

  constructor(which: number, aheadMs: number) {
    this.database = NAMES[which]!;
    this.#aheadMs = aheadMs;
    this.#ids = idSource(`${this.database}00000`);
  }

  /** Says something at a true moment; it is stamped with what this phone believes of the time and of the others. */
  say(draft: Draft, trueMs: number): Fact {
    const seen: Record<string, number> = {};
    for (const { id } of this.facts) {
      const of = databaseOf(id);
      if (of !== this.database) seen[of] = Math.max(seen[of] ?? 0, counterOf(id));
    }
    const at = trueMs + this.#aheadMs;
    const [fact] = stampFacts([draft], { day: DAY_ID, at, zone: 0, seen, nextId: this.#ids.next });
    this.facts.push(fact!);
    return fact!;
  }

  /** Ties the phone's clock to the timecode of the set, which is the true time of day. */
  tie(trueMs: number): void {
    const { frames, rate } = timeOfDayClock(trueMs, 0, '25');
    this.say({ kind: 'clock-followed', frames, rate, atMs: trueMs + this.#aheadMs }, trueMs);
  }

  /** Takes in what another phone has. */
  take(other: SetPhone): void {
    const known = new Set(this.facts.map(({ id }) => id));
    for (const fact of other.facts) {
      if (known.has(fact.id)) continue;
      this.facts.push(fact);
      this.#ids.see(fact.id);
    }
  }

  day(): Day {
    return foldDay(DAY_ID, this.facts);
  }
}
