/**
 * Ids of facts: a Lamport counter and its writer (Lamport 1978), as text whose order is the order of facts.
 * Six base-36 digits, a hyphen, then the writer: six characters for the database that wrote it and five for
 * the window. A writer is made anew with every database and every window, so no id can name two facts.
 */
export type FactId = string;

const DIGITS = 6;
const DATABASE_LENGTH = 6;
const DIGIT_0 = 48;
const LETTER_A = 97;
const FACT_ID = /^[0-9a-z]{6}-[0-9a-z]{11}$/;

/** The highest counter that is read from a stranger's file, so that nobody can exhaust the counter for us. */
export const HIGHEST_COUNTER = 500_000_000;

export const isFactId = (text: string): boolean => FACT_ID.test(text) && counterOf(text) <= HIGHEST_COUNTER;

/** `factId(44, 'k3f9x2a7b2c')` is `'000018-k3f9x2a7b2c'`. */
export const factId = (counter: number, writer: string): FactId =>
  `${counter.toString(36).padStart(DIGITS, '0')}-${writer}`;

/** Read digit by digit: a day is folded by these, and a text cut for each of its facts would cost as much as the rest. */
export function counterOf(id: FactId): number {
  let counter = 0;
  for (let at = 0; at < DIGITS; at += 1) {
    const code = id.charCodeAt(at);
    counter = counter * 36 + code - (code < LETTER_A ? DIGIT_0 : LETTER_A - 10);
  }
  return counter;
}

/** The database that wrote the fact: facts of one database have all been seen by its later facts. */
export const databaseOf = (id: FactId): string => id.slice(DIGITS + 1, DIGITS + 1 + DATABASE_LENGTH);

/** Whether this database wrote the fact. */
export const isOfDatabase = (id: FactId, database: string): boolean => id.startsWith(database, DIGITS + 1);

/** Who wrote the fact: one window of one database, which counts upwards and skips nothing it has kept. */
export const writerOf = (id: FactId): string => id.slice(DIGITS + 1);

export interface IdSource {
  /** The next id: one above the highest counter seen. */
  next(): FactId;
  /** Takes note of an id that came from elsewhere. */
  see(id: FactId): void;
}

/** Hands out ids for one window. `writer` is `databaseWriter` (6) followed by a window's own 5 characters. */
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
 * A set of ids for asking about every fact of a day, of which few are in it. Nearly all others are told apart by their
 * counters, so that their texts need not be hashed, which takes far longer.
 */
export class FewIds {
  readonly all = new Set<FactId>();
  readonly #counters: Uint8Array;

  /** `asked` is about how many ids will be asked for. */
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
