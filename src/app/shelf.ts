import type { DayId } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';

/** Facts of one writer as they travel: sealed, so nothing on the way can read or change them. */
export interface Batch {
  /** The public name of the key that signed it; safe in a subject. */
  readonly writer: string;
  /** The batches of a writer count from 1, without a gap. */
  readonly number: number;
  readonly bytes: Uint8Array;
}

/** A batch that this phone sealed or opened, kept as it travels: nobody else's can be sealed again. */
export interface KeptBatch extends Batch {
  /** The facts in it. */
  readonly ids: readonly FactId[];
  /** The streams that were seen to have it. */
  readonly on: readonly string[];
}

/** How far each stream was read, by its id. */
export type ReadUpTo = Readonly<Record<string, number>>;

/** Where the batches of live days outlive the window. */
export interface Shelf {
  read(day: DayId): Promise<{ readonly batches: readonly KeptBatch[]; readonly upTo: ReadUpTo }>;
  /** In one transaction: a stream is never read further than what was kept of it. */
  keep(day: DayId, batches: readonly KeptBatch[], upTo: ReadUpTo): Promise<void>;
  /** Removes batches that nobody will ever take. */
  drop(day: DayId, batches: readonly KeptBatch[]): Promise<void>;
  forget(day: DayId): Promise<void>;
}
