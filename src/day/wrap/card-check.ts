import type { Day, FactId, FactOf } from '../model.ts';
import type { DifferenceKey } from './card-settlement.ts';

/** The last time the card was compared with the log. */
export interface CardCheck {
  readonly by: FactId;
  /** UTC ms when it was said. */
  readonly atMs: number;
  readonly files: number;
  readonly recordings: number;
  /** Differences nobody had settled then. */
  readonly open: number;
  /** What the log was kept in. */
  readonly kept: number;
}

/** What the report may say of the card: null while it was never checked, or the check was taken back. */
export function cardCheckOf(day: Day): CardCheck | null {
  const check = day.facts.findLast(
    (fact): fact is FactOf<'card-checked'> => fact.kind === 'card-checked' && !day.takenBack.has(fact.id),
  );
  if (!check) return null;
  const { id: by, at: atMs, files, recordings, open } = check;
  return { by, atMs, files, recordings, open, kept: keptDifferences(day).size };
}

/** What the log was kept against: the fields in question as `fieldName` writes them, each with the values it was kept for. */
export type Kept = ReadonlyMap<string, ReadonlySet<string | undefined>>;

/** The differences in which the log was kept; without values where an earlier version said so. */
export function keptDifferences(day: Day): Kept {
  const kept = new Map<string, Set<string | undefined>>();
  for (const fact of day.facts) {
    if (fact.kind !== 'difference-kept' || day.takenBack.has(fact.id)) continue;
    const name = fieldName(fact);
    kept.set(name, (kept.get(name) ?? new Set()).add(fact.values));
  }
  return kept;
}

/** Whether the log was kept in this difference, with these values on both sides. */
export function isKept(kept: Kept, difference: DifferenceKey): boolean {
  const values = kept.get(fieldName(difference));
  return values !== undefined && (values.has(undefined) || values.has(difference.values));
}

/** One text for what is in question: `'["length-differs","","24BT3.wav",""]'`. */
const fieldName = ({ code, take = '', file = '', track = '' }: DifferenceKey): string =>
  JSON.stringify([code, take, file, track]);
