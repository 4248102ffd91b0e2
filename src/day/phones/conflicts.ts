import type { Day, Take } from '../model.ts';
import { takesNumberedTwice } from '../takes.ts';
import { type FieldConflict, fieldConflicts } from './field-conflicts.ts';
import { type LinkConflict, linkConflicts } from './link-conflicts.ts';
import { type OrderUnsure, orderUnsure } from './order-unsure.ts';

/** What cannot both be true, or could have been either way round, shown until somebody says what is true. */
export type Conflict =
  | LinkConflict
  | FieldConflict
  /** One slate and take number was logged twice. */
  | { readonly kind: 'take-twice'; readonly takes: readonly Take[] }
  | OrderUnsure;

const found = new WeakMap<Day, Conflict[]>();

/** The conflicts of the day, along the whole line; a day of one phone can only have a number logged twice. */
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
