import { counterOf, databaseOf, type FactId } from '../../shared/ids.ts';
import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import type { Envelope } from '../kinds/envelope.ts';
import { mergeFacts } from '../merge-facts.ts';
import { isSameFact } from '../stored.ts';
import type { DayFile } from './day-file-facts.ts';

const DAY_MS = 86_400_000;

/**
 * The largest day an import may produce. The limits are below what reading accepts, leaving room for a
 * lifetime of use: counters grow by one, and each entry carries the counters of all known databases.
 * `aheadMs` is how far ahead of this phone's clock an entry may be dated: later entries that know of it can
 * never be earlier on the line.
 */
export const ADMIT_LIMITS = {
  counter: 10_000_000,
  facts: 150_000,
  /** In characters, as in a file. */
  size: 30_000_000,
  databases: 100,
  aheadMs: 2 * 366 * DAY_MS,
} as const;

export interface HeldDay {
  readonly stored: readonly Envelope[];
  /** Facts imported without checks from a damaged file: an intact one replaces each. */
  readonly unsure: ReadonlySet<FactId>;
}

/** One id, two bodies, and no way to tell which is damaged. */
export interface Dispute {
  readonly here: Envelope;
  readonly there: Envelope;
}

/** Which of two versions to keep, once somebody has looked at both. */
export type Stands = 'here' | 'file';

/** What a file would do to a day. */
export interface Admitted {
  /** New ones, in order of ids. */
  readonly fresh: readonly Envelope[];
  /** Intact ones that replace damaged ones. */
  readonly mended: readonly Envelope[];
  /** How many were already known. */
  readonly same: number;
  /** Those in the file that are skipped, because the phone's own are kept. */
  readonly leftOut: readonly FactId[];
  /** The day's unsure facts after the import. */
  readonly unsure: ReadonlySet<FactId>;
}

/**
 * What a file would do to a day, or why it is refused. An intact fact replaces one that may be damaged. If
 * nobody can tell which is right, it fails with `fact-id-twice` and `disputes`, unless `stands` decides. Used
 * both to preview an import and to do it.
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

/** Why these facts may not join the day's others; undefined if they may. `nowMs` is the phone's clock. */
function refusedAtDoor(
  here: readonly Envelope[],
  fresh: readonly Envelope[],
  nowMs: number,
): Problem | undefined {
  if (fresh.length === 0) return undefined;
  const high = fresh.find(({ id, seen = {} }) =>
    [counterOf(id), ...Object.values(seen)].some((counter) => counter > ADMIT_LIMITS.counter),
  );
  if (high) return { code: 'admit-counter', limit: ADMIT_LIMITS.counter };
  const latest = fresh.reduce((last, { at }) => Math.max(last, at), 0);
  if (latest > nowMs + ADMIT_LIMITS.aheadMs) return { code: 'admit-date', atMs: latest, nowMs };
  const all = [...here, ...fresh];
  if (all.length > ADMIT_LIMITS.facts)
    return { code: 'admit-facts', count: all.length, limit: ADMIT_LIMITS.facts };
  const databases = new Set(all.map(({ id }) => databaseOf(id))).size;
  if (databases > ADMIT_LIMITS.databases)
    return { code: 'admit-databases', count: databases, limit: ADMIT_LIMITS.databases };
  const size = all.reduce((sum, fact) => sum + JSON.stringify(fact).length, 0);
  if (size > ADMIT_LIMITS.size) return { code: 'admit-size' };
  return undefined;
}

/** The day after this import, as the next file of the same day finds it. */
export function heldAfter(held: HeldDay, { fresh, mended, unsure }: Admitted): HeldDay {
  const changed = new Map(mended.map((fact) => [fact.id, fact]));
  return { stored: [...held.stored.map((fact) => changed.get(fact.id) ?? fact), ...fresh], unsure };
}
