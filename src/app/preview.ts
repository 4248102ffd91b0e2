import { foldDay } from '../day/fold/fold.ts';
import type { Day, Take } from '../day/model.ts';
import { type Conflict, conflictsOf } from '../day/phones/conflicts.ts';
import { openTakes, takesInOrder } from '../day/takes.ts';
import { type Admitted, admit, type Dispute, type HeldDay, heldAfter } from '../facts/day-file/admit.ts';
import type { DayFile } from '../facts/day-file/day-file-facts.ts';
import type { DayId } from '../facts/kinds/envelope.ts';
import { reportOf } from '../report/model.ts';
import type { Change } from '../report/revision/change.ts';
import { reportChanges } from '../report/revision/report-changes.ts';
import type { Problem, Result } from '../shared/result.ts';
import type { FileRead } from './import-files.ts';
import { readAll } from './read-stored.ts';

/** What importing a set of files would do to one day. Nothing of it is done yet. */
export interface Preview {
  readonly day: DayId;
  /** The phone has no such day. */
  readonly isNew: boolean;
  /** The day as it would be. */
  readonly after: Day;
  readonly fresh: number;
  readonly mended: number;
  readonly known: number;
  /** Entries that differ under one id, where nothing says which is damaged: what is here stands unless it is said. */
  readonly disputes: readonly Dispute[];
  /** Files of this day that may not come in. */
  readonly refused: readonly { readonly name: string; readonly problem: Problem }[];
  /** Null where the day is too large to be compared with itself while somebody waits. */
  readonly changes: DayChanges | null;
  /** UTC ms of the latest entry dated after this phone's clock by more than clocks differ; null where none is. */
  readonly datedMs: number | null;
}

export interface DayChanges {
  /** What the head says else than before. */
  readonly head: readonly Change[];
  readonly added: readonly Take[];
  readonly gone: readonly Take[];
  /** Rolling in the file, and not before. */
  readonly opened: readonly Take[];
  /** What else reads differently in the report. */
  readonly other: readonly Change[];
  readonly conflicts: readonly Conflict[];
}

/** A day with more is a hundred times a full one. */
const MOST_COMPARED = 30_000;
const AHEAD_MS = 24 * 3_600_000;

/** What each day would be. `heldOf` gives what the phone has of a day, and `admit` decides, here as when it is done. */
export async function previewOf(
  reads: readonly FileRead[],
  heldOf: (day: DayId) => Promise<HeldDay>,
  nowMs: number,
): Promise<Preview[]> {
  const days = [...new Set(reads.flatMap(({ file }) => file?.day ?? []))];
  const held = await Promise.all(days.map(heldOf));
  return days.map((day, at) =>
    previewDay(
      day,
      reads.filter(({ file }) => file?.day === day),
      held[at]!,
      nowMs,
    ),
  );
}

function previewDay(day: DayId, reads: readonly FileRead[], before: HeldDay, nowMs: number): Preview {
  const disputes: Dispute[] = [];
  const refused: { name: string; problem: Problem }[] = [];
  const admitted: Admitted[] = [];
  let held = before;
  for (const { name, file } of reads) {
    const { result, disputed } = admitShown(held, file!, nowMs);
    disputes.push(...disputed);
    if (!result.ok) refused.push({ name, problem: result.problem });
    else {
      admitted.push(result.value);
      held = heldAfter(held, result.value);
    }
  }
  const sum = (count: (one: Admitted) => number): number =>
    admitted.reduce((total, one) => total + count(one), 0);
  const latest = Math.max(0, ...admitted.flatMap(({ fresh }) => fresh.map(({ at }) => at)));
  const after = foldDay(day, readAll(held.stored).facts);
  return {
    day,
    isNew: before.stored.length === 0,
    after,
    fresh: sum(({ fresh }) => fresh.length),
    mended: sum(({ mended }) => mended.length),
    known: sum(({ same }) => same),
    disputes,
    refused,
    changes: held.stored.length > MOST_COMPARED ? null : changesBetween(before, after),
    datedMs: latest > nowMs + AHEAD_MS ? latest : null,
  };
}

interface Shown {
  readonly result: Result<Admitted>;
  readonly disputed: readonly Dispute[];
}

/** With what is here standing, where it is disputed. */
function admitShown(held: HeldDay, file: DayFile, nowMs: number): Shown {
  const first = admit(held, file, nowMs);
  if (first.ok || !('disputes' in first.problem)) return { result: first, disputed: [] };
  return {
    result: admit(held, file, nowMs, 'here'),
    disputed: first.problem.disputes as readonly Dispute[],
  };
}

function changesBetween({ stored }: HeldDay, after: Day): DayChanges {
  const before = foldDay(after.id, readAll(stored).facts);
  const changes = stored.length > 0 ? reportChanges(reportOf(before), reportOf(after)) : [];
  const isWholeTake = ({ part, kind }: Change): boolean => part === 'take' && kind !== 'changed';
  const isHead = ({ part, what }: Change): boolean => part === 'head' && what !== 'Card';
  const known = new Set(openTakes(before).map(({ id }) => id));
  const conflicts = new Set(conflictsOf(before).map(nameOfConflict));
  return {
    head: changes.filter(isHead),
    added: takesInOrder(after).filter(({ id }) => !before.takes.has(id)),
    gone: takesInOrder(before).filter(({ id }) => !after.takes.has(id)),
    opened: openTakes(after).filter(({ id }) => !known.has(id)),
    // What is not settled is told as a contradiction.
    other: changes.filter((one) => one.part !== 'open' && !isHead(one) && !isWholeTake(one)),
    conflicts: conflictsOf(after).filter((one) => !conflicts.has(nameOfConflict(one))),
  };
}

/** Without what may be said of it since, such as the takes that it concerns. */
const nameOfConflict = (conflict: Conflict): string =>
  JSON.stringify(
    conflict.kind === 'take-twice' ? conflict.takes.map(({ id }) => id) : { ...conflict, takes: null },
  );
