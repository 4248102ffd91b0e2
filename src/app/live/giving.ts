import type { Problem, Result } from '../../shared/result.ts';
import type { KeptBatch } from '../shelf.ts';
import type { BatchBook } from './book.ts';
import type { DayFacts } from './day-facts.ts';
import type { LogConnection } from './log.ts';
import { sealNew } from './seal-new.ts';
import type { Sealer } from './sealer.ts';

/** Waiting for their acknowledgements together. */
const AT_ONCE = 32;
/** For a batch that the server says it knows to come back from it. */
const COMES_BACK_WITHIN_MS = 2000;

/** Gives a server what this phone has and the server lacks, each writer's batches in their order. */
export class Giving {
  readonly #log: LogConnection;
  readonly #sealer: Sealer;
  readonly #book: BatchBook;
  readonly #facts: DayFacts;
  /** How often the server said that it knows a batch which it does not have. */
  readonly #refusedAsKnown = new Map<KeptBatch['bytes'], number>();
  readonly #tooLarge = new Set<KeptBatch['bytes']>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Something may be there to give. */
  isWanted = true;
  /** What keeps something from being given though the server is there. */
  problem: Problem | null = null;
  /** Called when it is time to try again. */
  again: () => void = () => {};

  constructor(log: LogConnection, parts: { sealer: Sealer; book: BatchBook; facts: DayFacts }) {
    this.#log = log;
    this.#sealer = parts.sealer;
    this.#book = parts.book;
    this.#facts = parts.facts;
  }

  /** Whether something here is not acknowledged by the server, or was not looked at yet. */
  get owes(): boolean {
    return this.isWanted || this.#lacked().length > 0;
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  /** Gives a problem that ends the connection; what concerns one batch only is in `problem`. */
  async giveAll(): Promise<Problem | undefined> {
    this.isWanted = false;
    const { isAdmitted } = await sealNew(this.#sealer, this.#book, this.#facts);
    if (!isAdmitted) this.problem = { code: 'live-not-admitted' };
    else if (this.problem?.code === 'live-not-admitted') this.problem = null;
    const lacked = this.#lacked();
    for (let from = 0; from < lacked.length; from += AT_ONCE) {
      const some = lacked.slice(from, from + AT_ONCE);
      const given = await Promise.all(some.map((batch) => this.#give(batch)));
      for (const [at, result] of given.entries()) this.#note(some[at]!, result);
      await this.#book.save();
      const failed = given.find((result) => !result.ok && !isOfOne(result.problem));
      if (failed && !failed.ok) return failed.problem;
      if (this.problem?.code === 'live-not-allowed') return undefined;
    }
    return undefined;
  }

  #lacked(): KeptBatch[] {
    const streams = this.#log.streams.map(({ id }) => id);
    return this.#book.lackedBy(streams).filter(({ bytes }) => !this.#tooLarge.has(bytes));
  }

  #give(batch: KeptBatch): Promise<Result<boolean>> {
    return this.#log.give(batch, this.#refusedAsKnown.get(batch.bytes) ?? 0);
  }

  #note(batch: KeptBatch, result: Result<boolean>): void {
    if (!result.ok) {
      if (!isOfOne(result.problem)) return;
      this.problem = result.problem;
      if (result.problem.code === 'live-too-large') this.#tooLarge.add(batch.bytes);
    } else if (result.value) this.#book.seen(batch, this.#log.streams[0]!.id);
    else this.#waitFor(batch);
  }

  /** Somebody else may have used its message id for garbage, so it counts only when it was read back. */
  #waitFor({ bytes }: KeptBatch): void {
    this.#refusedAsKnown.set(bytes, (this.#refusedAsKnown.get(bytes) ?? 0) + 1);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.isWanted = true;
      this.again();
    }, COMES_BACK_WITHIN_MS);
  }
}

/** Concerns one batch, and not the connection. */
const isOfOne = ({ code }: Problem): boolean => code === 'live-too-large' || code === 'live-not-allowed';
