import type { Fact, UnknownFact } from '../facts/fact.ts';
import { counterOf, databaseOf, type FactId } from '../shared/ids.ts';
import { type PhoneClock, phoneClocks } from './phone-clocks.ts';

/** One phone's facts so far: counters, and times that never decrease. */
interface Told {
  readonly counters: number[];
  readonly times: number[];
}

/**
 * When each fact was recorded on a day shared by several phones, by the first phone's clock. A fact is never
 * earlier than anything its phone knew of, and otherwise as late as its clock says: a hybrid clock after
 * Kulkarni et al. (2014), computed from the facts and stored nowhere.
 */
export class SaidOrder {
  /** How far each phone's clock is behind the first one's. */
  readonly clocks: ReadonlyMap<string, PhoneClock>;
  readonly #told = new Map<string, Told>();
  readonly #times = new Map<FactId, number>();
  #latest = 0;

  /** `facts` are all facts of the day, in order of ids. */
  constructor(facts: readonly (Fact | UnknownFact)[]) {
    this.clocks = phoneClocks(facts);
    for (const fact of facts) this.add(fact);
  }

  /** UTC ms. */
  timeOf(id: FactId): number {
    return this.#times.get(id) ?? 0;
  }

  /** The next fact in order of ids. */
  add(fact: Fact | UnknownFact): void {
    const database = databaseOf(fact.id);
    const own = this.#told.get(database) ?? { counters: [], times: [] };
    this.#told.set(database, own);
    let time = Math.max(this.#byClock(fact), own.times.at(-1) ?? 0);
    for (const [other, counter] of Object.entries(fact.seen ?? {}))
      time = Math.max(time, timeUpTo(this.#told.get(other), counter));
    own.counters.push(counterOf(fact.id));
    own.times.push(time);
    this.#times.set(fact.id, time);
    this.#latest = Math.max(this.#latest, time);
  }

  /**
   * Whether a fact comes after everything so far and carries no news about clocks: it knows all, its own
   * clock agrees, and it ties no clock. Such a fact can simply be added.
   */
  isLast(fact: Fact): boolean {
    if (fact.kind === 'clock-followed' || this.#byClock(fact) < this.#latest) return false;
    const own = databaseOf(fact.id);
    return (
      this.#told.has(own) &&
      [...this.#told].every(
        ([other, { counters }]) => other === own || (fact.seen?.[other] ?? -1) >= counters.at(-1)!,
      )
    );
  }

  /** How far apart in ms two phones' facts must be for their order to be certain. */
  doubtBetween(one: Fact, other: Fact): number {
    return this.#doubt(one) + this.#doubt(other);
  }

  #doubt({ id }: Fact): number {
    return this.clocks.get(databaseOf(id))?.doubt ?? 0;
  }

  #byClock({ id, at }: Fact | UnknownFact): number {
    return at + (this.clocks.get(databaseOf(id))?.offset ?? 0);
  }
}

/** The time of a phone's last fact up to this counter. */
function timeUpTo(told: Told | undefined, counter: number): number {
  if (!told) return 0;
  const { counters, times } = told;
  let [from, to] = [0, counters.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (counters[middle]! <= counter) from = middle + 1;
    else to = middle;
  }
  return times[from - 1] ?? 0;
}
