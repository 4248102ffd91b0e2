import type { Envelope } from '../../facts/kinds/envelope.ts';
import type { BatchBook } from './book.ts';
import type { DayFacts } from './day-facts.ts';
import type { Batch, LogMessage } from './log.ts';
import type { Sealer } from './sealer.ts';

interface Waiting {
  readonly batch: Batch;
  readonly stream: string;
  readonly sequence: number;
}

interface OpenedBatch extends Waiting {
  readonly facts: readonly Envelope[];
}

/** More that cannot be opened yet is a flood: what was first is let go, and read again when the phone next connects. */
const MOST_WAITING = 5000;

/** Takes the messages of a log into the day: what is sound and new, each once, whatever else is there. */
export class Incoming {
  #waiting: Waiting[] = [];
  readonly #sealer: Sealer;
  readonly #book: BatchBook;
  readonly #facts: DayFacts;
  /** Messages that are no batch of this day's writers, or hold what no day may hold. */
  refused = 0;
  /** Somebody else writes under this phone's key. */
  isKeyTwice = false;

  constructor(sealer: Sealer, book: BatchBook, facts: DayFacts) {
    this.#sealer = sealer;
    this.#book = book;
    this.#facts = facts;
  }

  /** Resolves when what could be opened is on the disk, and the streams are noted as read so far. */
  async take(messages: readonly LogMessage[]): Promise<void> {
    for (const message of messages) this.#look(message);
    await this.#openAll();
    for (const { stream, sequence } of messages)
      this.#book.readUpTo(stream, Math.min(sequence, this.#safeUpTo(stream)));
    await this.#book.save();
  }

  #look({ stream, sequence, writer, bytes }: LogMessage): void {
    const claimed = this.#sealer.claimed(bytes);
    if (!claimed || claimed.writer !== writer) {
      this.refused += 1;
      return;
    }
    this.#waiting.push({ batch: { ...claimed, bytes }, stream, sequence });
  }

  /** One batch may be what another waits for: an earlier one of its writer, or the one that admits it. */
  async #openAll(): Promise<void> {
    for (let isMore = true; isMore; ) {
      const opened: OpenedBatch[] = [];
      const still: Waiting[] = [];
      for (const one of this.#waiting) {
        const facts = this.#isKnown(one) ? null : await this.#sealer.open(one.batch);
        if (facts === 'not-yet') still.push(one);
        else if (facts === 'refused') this.refused += 1;
        else if (facts === 'number-twice') this.#numberTwice(one.batch);
        else if (facts) opened.push({ ...one, facts });
      }
      this.#waiting = still.slice(-MOST_WAITING);
      await this.#add(opened);
      isMore = opened.length > 0 && this.#waiting.length > 0;
    }
  }

  /** Notes that the stream has it, if it is here already. */
  #isKnown({ batch, stream }: Waiting): boolean {
    const known = this.#book.find(batch);
    if (!known || !isSame(known.bytes, batch.bytes)) return false;
    this.#book.seen(known, stream);
    return true;
  }

  #numberTwice({ writer }: Batch): void {
    if (writer === this.#sealer.writer) this.isKeyTwice = true;
    this.refused += 1;
  }

  /** Together, so that the day is folded once; one by one if something among them may not be added. */
  async #add(opened: readonly OpenedBatch[]): Promise<void> {
    if (opened.length === 0) return;
    const all = await this.#facts.add(opened.flatMap(({ facts }) => facts));
    for (const { batch, facts, stream } of opened) {
      if (all.ok || (await this.#facts.add(facts)).ok)
        this.#book.add(
          batch,
          facts.map(({ id }) => id),
          stream,
        );
      else this.refused += 1;
    }
  }

  /** What waits is read again next time: it is in memory only. */
  #safeUpTo(stream: string): number {
    const here = this.#waiting.filter((one) => one.stream === stream);
    return Math.min(...here.map(({ sequence }) => sequence - 1), Number.MAX_SAFE_INTEGER);
  }
}

const isSame = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);
