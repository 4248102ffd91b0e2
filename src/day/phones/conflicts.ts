import type { Day, Take } from '../model.ts';
import { takesNumberedTwice } from '../takes.ts';
import { type FieldConflict, fieldConflicts } from './field-conflicts.ts';
import { type LinkConflict, linkConflicts } from './link-conflicts.ts';
import { type OrderUnsure, orderUnsure } from './order-unsure.ts';

/** What cannot both be true, or could have happened in either order, shown until somebody resolves it. */
export type Conflict =
  | LinkConflict
  | FieldConflict
  /** One slate and take number was logged twice. */
  | { readonly kind: 'take-twice'; readonly takes: readonly Take[] }
  | OrderUnsure;

const found = new WeakMap<Day, Conflict[]>();

/** The conflicts along the whole line; a day of one phone can only have duplicate take numbers. */
export function conflictsOf(day: Day): Conflict[] {
  const known = found.get(day);
  if (known) return known;
  const conflicts: Conflict[] = [
    ...linkConflicts(day),
    ...fieldConflicts(day),
    ...takesNumberedTwice(day).map((takes): Conflict => ({ kind: 'take-twice', takes })),
    ...orderUnsure(day),
  ];
  found.set(day, conflicts);
  return conflicts;
}
