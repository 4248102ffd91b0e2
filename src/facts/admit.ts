import type { FactId } from '../shared/ids.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { DayFile } from './day-file-facts.ts';
import { refusedAtDoor } from './door.ts';
import type { Envelope } from './envelope.ts';
import { mergeFacts } from './merge-facts.ts';
import { isSameFact } from './stored.ts';

/** What this phone has of a day. */
export interface HeldDay {
  readonly stored: readonly Envelope[];
  /** Facts that came from a damaged file without checks: a whole one takes the place of each. */
  readonly unsure: ReadonlySet<FactId>;
}

/** One id, two bodies, and nothing that says which of them is damaged. */
export interface Dispute {
  readonly here: Envelope;
  readonly there: Envelope;
}

/** Which of two bodies stands, where somebody has looked at both. */
export type Stands = 'here' | 'file';

/** What a file does to a day. */
export interface Admitted {
  /** Not known yet, in the order of ids. */
  readonly fresh: readonly Envelope[];
  /** Whole ones in place of damaged ones. */
  readonly mended: readonly Envelope[];
  /** How many were known. */
  readonly same: number;
  /** Those of the file that stay out, because what is here stands. */
  readonly leftOut: readonly FactId[];
  /** Those of the day that are unsure afterwards. */
  readonly unsure: ReadonlySet<FactId>;
}

/**
 * What a file does to a day, or why it may not come in. A whole fact takes the place of one that may be damaged. Two of
 * which nobody can tell that fail with `fact-id-twice` and `disputes`, unless it is said which `stands`. Whatever shows
 * what a file would change, and whatever takes it in, asks this.
 */
export function admit(held: HeldDay, file: DayFile, nowMs: number, stands?: Stands): Result<Admitted> {
  const known = new Map(held.stored.map((fact) => [fact.id, fact]));
  const mended: Envelope[] = [];
  const disputes: Dispute[] = [];
  const leftOut = new Set<FactId>();
  for (const fact of file.stored) {
    const here = known.get(fact.id);
    if (!here || isSameFact(here, fact)) continue;
    const beats = held.unsure.has(fact.id) && !file.unchecked;
    if (beats || stands === 'file') mended.push(fact);
    else if (stands === 'here') leftOut.add(fact.id);
    else disputes.push({ here, there: fact });
  }
  if (disputes.length > 0)
    return fail({ code: 'fact-id-twice', ids: disputes.map(({ here }) => here.id), disputes });
  const changed = new Set(mended.map(({ id }) => id));
  const coming = file.stored.filter(({ id }) => !changed.has(id) && !leftOut.has(id));
  const merged = mergeFacts(held.stored, coming);
  if (!merged.ok) return merged;
  const { fresh, same } = merged.value;
  const refused = refusedAtDoor(held.stored, [...fresh, ...mended], nowMs);
  if (refused) return fail(refused);
  const unsure = new Set(held.unsure);
  if (file.unchecked) for (const { id } of [...fresh, ...mended]) unsure.add(id);
  else for (const { id } of file.stored) if (!leftOut.has(id)) unsure.delete(id);
  return ok({ fresh, mended, same, leftOut: [...leftOut], unsure });
}

/** The day after it: as the next file of the same day comes upon it. */
export function heldAfter(held: HeldDay, { fresh, mended, unsure }: Admitted): HeldDay {
  const changed = new Map(mended.map((fact) => [fact.id, fact]));
  return { stored: [...held.stored.map((fact) => changed.get(fact.id) ?? fact), ...fresh], unsure };
}
