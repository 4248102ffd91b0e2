import type { DayId } from '../../facts/kinds/envelope.ts';

/** What a phone has of a shared day: of each writer, the last batch without a gap. */
export interface SealedHave {
  readonly day: DayId;
  /** The database of the phone that asks. */
  readonly from: string;
  readonly last: ReadonlyMap<string, number>;
}

interface Numbered {
  readonly writer: string;
  readonly number: number;
}

/** By writer, the last batch without a gap. */
export function lastOfEach(batches: readonly Numbered[]): Map<string, number> {
  const last = new Map<string, number>();
  for (const { writer, number } of batches.toSorted((one, other) => one.number - other.number))
    if (number === (last.get(writer) ?? 0) + 1) last.set(writer, number);
  return last;
}

/** The batches that the other phone lacks, each writer's in order of their numbers. */
export const lackedBatches = <Batch extends Numbered>(
  last: ReadonlyMap<string, number>,
  batches: readonly Batch[],
): Batch[] =>
  batches
    .filter(({ writer, number }) => number > (last.get(writer) ?? 0))
    .sort((one, other) => one.number - other.number);
