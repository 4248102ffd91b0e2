import type { DayId } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import type { KeptBatch, Shelf } from '../shelf.ts';
import type { Batch } from './log.ts';

/**
 * What this phone has of a day as batches, and which streams have them too. The outbox is no queue: it is what is here
 * and not on the server that answers, whoever wrote it; so two islands heal through any phone that visits both.
 */
export class BatchBook {
  readonly #shelf: Shelf;
  readonly #day: DayId;
  readonly #batches = new Map<string, KeptBatch>();
  readonly #covered = new Set<FactId>();
  readonly #upTo: Record<string, number>;
  #changed = new Map<string, KeptBatch>();

  private constructor(shelf: Shelf, day: DayId, upTo: Readonly<Record<string, number>>) {
    this.#shelf = shelf;
    this.#day = day;
    this.#upTo = { ...upTo };
  }

  static async open(shelf: Shelf, day: DayId): Promise<BatchBook> {
    const { batches, upTo } = await shelf.read(day);
    const book = new BatchBook(shelf, day, upTo);
    for (const batch of batches) book.#put(batch);
    return book;
  }

  get all(): readonly KeptBatch[] {
    return [...this.#batches.values()];
  }

  find({ writer, number }: Pick<Batch, 'writer' | 'number'>): KeptBatch | undefined {
    return this.#batches.get(nameOf(writer, number));
  }

  /** Whether a fact is in any batch. */
  covers(id: FactId): boolean {
    return this.#covered.has(id);
  }

  /** What no stream of a server has, each writer's in order of numbers. */
  lackedBy(streams: readonly string[]): KeptBatch[] {
    return this.all
      .filter(({ on }) => !streams.some((stream) => on.includes(stream)))
      .sort((one, other) => one.number - other.number);
  }

  add(batch: Batch, ids: readonly FactId[], stream: string | null): KeptBatch {
    const { writer, number, bytes } = batch;
    const kept = { writer, number, bytes, ids, on: stream === null ? [] : [stream] };
    this.#put(kept);
    this.#changed.set(nameOf(writer, number), kept);
    return kept;
  }

  /** Notes that a stream has it. */
  seen(batch: KeptBatch, stream: string): void {
    const name = nameOf(batch.writer, batch.number);
    const kept = this.#batches.get(name) ?? batch;
    if (kept.on.includes(stream)) return;
    const now = { ...kept, on: [...kept.on, stream] };
    this.#batches.set(name, now);
    this.#changed.set(name, now);
  }

  upTo(stream: string): number {
    return this.#upTo[stream] ?? 0;
  }

  readUpTo(stream: string, sequence: number): void {
    this.#upTo[stream] = Math.max(this.upTo(stream), sequence);
  }

  /** A stream that lost what it had is read anew, and given what it lacks. */
  startAgain(stream: string): void {
    this.#upTo[stream] = 0;
    for (const batch of this.all.filter(({ on }) => on.includes(stream))) {
      const now = { ...batch, on: batch.on.filter((one) => one !== stream) };
      this.#batches.set(nameOf(batch.writer, batch.number), now);
      this.#changed.set(nameOf(batch.writer, batch.number), now);
    }
  }

  async save(): Promise<void> {
    const changed = this.#changed;
    this.#changed = new Map();
    try {
      await this.#shelf.keep(this.#day, [...changed.values()], { ...this.#upTo });
    } catch (error) {
      // A full phone: the next call tries again, with whatever was noted since.
      this.#changed = new Map([...changed, ...this.#changed]);
      throw error;
    }
  }

  #put(batch: KeptBatch): void {
    this.#batches.set(nameOf(batch.writer, batch.number), batch);
    for (const id of batch.ids) this.#covered.add(id);
  }
}

const nameOf = (writer: string, number: number): string => `${writer} ${number}`;
