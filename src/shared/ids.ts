/**
 * Fact ids: a Lamport counter and its writer (Lamport 1978), as text that sorts in the order of facts. Six
 * base-36 digits, a hyphen, then six characters for the database and five for the window. Every database and
 * window gets a new writer, so no id can name two facts.
 */
export type FactId = string;

const DIGITS = 6;
const DATABASE_LENGTH = 6;
const DIGIT_0 = 48;
const LETTER_A = 97;
const FACT_ID = /^[0-9a-z]{6}-[0-9a-z]{11}$/;

/** The highest counter accepted from a file, so that no file can use the counter up. */
export const HIGHEST_COUNTER = 500_000_000;

export const isFactId = (text: string): boolean => FACT_ID.test(text) && counterOf(text) <= HIGHEST_COUNTER;

/** `factId(44, 'k3f9x2a7b2c')` is `'000018-k3f9x2a7b2c'`. */
export const factId = (counter: number, writer: string): FactId =>
  `${counter.toString(36).padStart(DIGITS, '0')}-${writer}`;

/**
 * Read digit by digit: folding a day calls this for every fact, and slicing the text would cost as much as
 * everything else.
 */
export function counterOf(id: FactId): number {
  let counter = 0;
  for (let at = 0; at < DIGITS; at += 1) {
    const code = id.charCodeAt(at);
    counter = counter * 36 + code - (code < LETTER_A ? DIGIT_0 : LETTER_A - 10);
  }
  return counter;
}

/** The database that wrote the fact: its later facts have all seen its earlier ones. */
export const databaseOf = (id: FactId): string => id.slice(DIGITS + 1, DIGITS + 1 + DATABASE_LENGTH);

export const isOfDatabase = (id: FactId, database: string): boolean => id.startsWith(database, DIGITS + 1);

/** The writer of a fact: one window of one database, whose counter leaves no gaps in what it has saved. */
export const writerOf = (id: FactId): string => id.slice(DIGITS + 1);

export interface IdSource {
  /** The next id: one above the highest counter seen. */
  next(): FactId;
  /** Records an id that came from elsewhere, so that the next one is higher. */
  see(id: FactId): void;
}

/** Issues ids for one window. `writer` is `databaseWriter` (6) followed by the window's own 5 characters. */
export function idSource(writer: string, highestSeen = 0): IdSource {
  let highest = highestSeen;
  return {
    next() {
      highest += 1;
      return factId(highest, writer);
    },
    see(id) {
      highest = Math.max(highest, counterOf(id));
    },
  };
}

/**
 * A small set of ids to test all facts of a day against. Most misses are rejected by their counters alone,
 * which is far faster than hashing the text.
 */
export class FewIds {
  readonly all = new Set<FactId>();
  readonly #counters: Uint8Array;

  /** `asked` is roughly how many ids will be looked up. */
  constructor(asked: number) {
    this.#counters = new Uint8Array(asked + 1);
  }

  add(id: FactId): void {
    this.all.add(id);
    this.#counters[counterOf(id) % this.#counters.length] = 1;
  }

  has(id: FactId, counter = counterOf(id)): boolean {
    return this.#counters[counter % this.#counters.length] === 1 && this.all.has(id);
  }
}
