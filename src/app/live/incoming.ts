import { isSameBytes } from '../../exchange/sealed/bytes.ts';
import type { BatchBook } from './book.ts';
import type { DayFacts } from './day-facts.ts';
import type { LogMessage } from './log.ts';
import { noteRefusal } from './refusals.ts';
import type { OpenedBatch, Sealer } from './sealer.ts';

/** Where a message stands in a log. */
type Place = Pick<LogMessage, 'stream' | 'sequence'>;

interface Came {
  readonly batch: OpenedBatch;
  /** The streams that have it. */
  readonly on: readonly string[];
}

/** Takes the messages of a log into the day: what is sound and new, each once, whatever else is there. */
export class Incoming {
  /** Of the messages that wait at the door, by what they go by there: those are read again after a restart. */
  readonly #waiting = new Map<string, Place[]>();
  readonly #sealer: Sealer;
  readonly #book: BatchBook;
  readonly #facts: DayFacts;
  /** Messages that are no batch of this day's writers, or hold what no day may hold. */
  refused = 0;
  /** Somebody else writes under this phone's key, from the batch of this number on. */
  keyTwiceFrom: number | null = null;

  constructor(sealer: Sealer, book: BatchBook, facts: DayFacts) {
    this.#sealer = sealer;
    this.#book = book;
    this.#facts = facts;
  }

  /** Resolves when what could be opened is on the disk, and the streams are noted as read so far. */
  async take(messages: readonly LogMessage[]): Promise<void> {
    const came: Came[] = [];
    for (const message of messages) came.push(...(await this.#look(message)));
    await this.#add(came);
    for (const { stream, sequence } of messages)
      this.#book.readUpTo(stream, Math.min(sequence, this.#safeUpTo(stream)));
    await this.#book.save();
  }

  async #look({ stream, sequence, writer, bytes }: LogMessage): Promise<Came[]> {
    const claimed = this.#sealer.claimed(bytes);
    if (!claimed || claimed.writer !== writer) {
      this.refused += 1;
      return [];
    }
    const known = this.#book.find(claimed);
    if (known && isSameBytes(known.bytes, bytes)) {
      this.#book.seen(known, stream);
      return [];
    }
    const opened = await this.#sealer.open(bytes);
    if (typeof opened === 'string') {
      this.refused += 1;
      if (opened === 'number-twice') this.#noteKeyTwice(claimed);
      return [];
    }
    if ('waits' in opened) {
      const places = this.#waiting.get(opened.waits) ?? [];
      this.#waiting.set(opened.waits, [...places, { stream, sequence }]);
      return [];
    }
    for (const waited of opened.refused) {
      this.refused += 1;
      this.#waiting.delete(waited);
    }
    return opened.opened.map((batch) => ({ batch, on: this.#streamsOf(batch, stream) }));
  }

  #streamsOf({ waited }: OpenedBatch, stream: string): string[] {
    if (waited === undefined) return [stream];
    const places = this.#waiting.get(waited) ?? [];
    this.#waiting.delete(waited);
    return [...new Set(places.map((place) => place.stream))];
  }

  /** Together, so that the day is folded once; one by one if something among them may not be added. */
  async #add(came: readonly Came[]): Promise<void> {
    if (came.length === 0) return;
    const all = await this.#facts.add(came.flatMap(({ batch }) => batch.facts));
    for (const { batch, on } of came) {
      const added = all.ok && all.value.twice.length === 0 ? all : await this.#facts.add(batch.facts);
      if (!added.ok) {
        this.refused += 1;
        continue;
      }
      if (added.value.twice.length > 0) this.#entryTwice(batch);
      const ids = batch.facts.map(({ id }) => id);
      const kept = this.#book.add(batch, ids, on[0] ?? null);
      for (const stream of on.slice(1)) this.#book.seen(kept, stream);
    }
  }

  /** Its writer has said something else under the number of an entry: two phones write as one. The first stands. */
  #entryTwice(batch: OpenedBatch): void {
    noteRefusal({ code: 'sealed-entry-twice' });
    this.refused += 1;
    this.#noteKeyTwice(batch);
  }

  #noteKeyTwice({ writer, number }: Pick<OpenedBatch, 'writer' | 'number'>): void {
    if (writer === this.#sealer.writer) this.keyTwiceFrom = Math.min(this.keyTwiceFrom ?? number, number);
  }

  /** What waits is read again next time: it is in memory only. */
  #safeUpTo(stream: string): number {
    const places = [...this.#waiting.values()].flat().filter((place) => place.stream === stream);
    return Math.min(...places.map(({ sequence }) => sequence - 1), Number.MAX_SAFE_INTEGER);
  }
}
