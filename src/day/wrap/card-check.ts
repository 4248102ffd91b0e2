import type { Day, FactId, FactOf } from '../model.ts';
import type { DifferenceKey } from './card-settlement.ts';

/** The last comparison of card and log. */
export interface CardCheck {
  readonly by: FactId;
  /** UTC ms of the check. */
  readonly atMs: number;
  readonly files: number;
  readonly recordings: number;
  /** Differences still open then. */
  readonly open: number;
  /** Differences in which the log was kept. */
  readonly kept: number;
}

/** The card check for the report: null if there was none, or it was retracted. */
export function cardCheckOf(day: Day): CardCheck | null {
  const check = day.facts.findLast(
    (fact): fact is FactOf<'card-checked'> => fact.kind === 'card-checked' && !day.takenBack.has(fact.id),
  );
  if (!check) return null;
  const { id: by, at: atMs, files, recordings, open } = check;
  return { by, atMs, files, recordings, open, kept: keptDifferences(day).size };
}

/** Differences in which the log was kept: by `fieldName`, each with the values it was kept for. */
export type Kept = ReadonlyMap<string, ReadonlySet<string | undefined>>;

/** As above; without values if an earlier version recorded it. */
export function keptDifferences(day: Day): Kept {
  const kept = new Map<string, Set<string | undefined>>();
  for (const fact of day.facts) {
    if (fact.kind !== 'difference-kept' || day.takenBack.has(fact.id)) continue;
    const name = fieldName(fact);
    kept.set(name, (kept.get(name) ?? new Set()).add(fact.values));
  }
  return kept;
}

/** Whether the log was kept for this difference, with these values on both sides. */
export function isKept(kept: Kept, difference: DifferenceKey): boolean {
  const values = kept.get(fieldName(difference));
  return values !== undefined && (values.has(undefined) || values.has(difference.values));
}

/** The difference as one string: `'["length-differs","","24BT3.wav",""]'`. */
const fieldName = ({ code, take = '', file = '', track = '' }: DifferenceKey): string =>
  JSON.stringify([code, take, file, track]);
