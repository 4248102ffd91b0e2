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

/** What importing these files would do to one day. Nothing is changed yet. */
export interface Preview {
  readonly day: DayId;
  /** The phone does not have this day. */
  readonly isNew: boolean;
  /** The day after the import. */
  readonly after: Day;
  readonly fresh: number;
  readonly mended: number;
  readonly known: number;
  /** Entries that differ under one id, either of which may be damaged: the phone's is kept by default. */
  readonly disputes: readonly Dispute[];
  /** Files of this day that cannot be imported. */
  readonly refused: readonly { readonly name: string; readonly problem: Problem }[];
  /** Null if the day is too large to compare while the user waits. */
  readonly changes: DayChanges | null;
  /** It says who may write on the day, and nobody checked that the owner said so. */
  readonly saysWhoWrites: boolean;
  /** UTC ms of the latest entry if it is dated further ahead than clocks normally differ; otherwise null. */
  readonly datedMs: number | null;
}

export interface DayChanges {
  /** Changes to the header. */
  readonly head: readonly Change[];
  readonly added: readonly Take[];
  readonly gone: readonly Take[];
  /** Takes that are rolling in the file but not here. */
  readonly opened: readonly Take[];
  /** Other changes to the report. */
  readonly other: readonly Change[];
  readonly conflicts: readonly Conflict[];
}

/** A hundred times a full day. */
const MOST_COMPARED = 30_000;
const AHEAD_MS = 24 * 3_600_000;
const WHO_WRITES: ReadonlySet<string> = new Set(['writer-admitted', 'writer-removed', 'day-passed-on']);

/** The result for each day. `heldOf` returns what the phone has; `admit` decides as it will on import. */
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
  let saysWhoWrites = false;
  for (const { name, file, sealed } of reads) {
    const { result, disputed } = admitShown(held, file!, nowMs);
    disputes.push(...disputed);
    if (!result.ok) refused.push({ name, problem: result.problem });
    else {
      admitted.push(result.value);
      saysWhoWrites ||= !sealed && result.value.fresh.some(({ kind }) => WHO_WRITES.has(kind));
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
    saysWhoWrites,
    datedMs: latest > nowMs + AHEAD_MS ? latest : null,
  };
}

interface Shown {
  readonly result: Result<Admitted>;
  readonly disputed: readonly Dispute[];
}

/** Keeps the phone's own entries where they are disputed. */
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
    // Anything unresolved is shown as a conflict.
    other: changes.filter((one) => one.part !== 'open' && !isHead(one) && !isWholeTake(one)),
    conflicts: conflictsOf(after).filter((one) => !conflicts.has(nameOfConflict(one))),
  };
}

/** Leaves out details that may change, such as the takes concerned. */
const nameOfConflict = (conflict: Conflict): string =>
  JSON.stringify(
    conflict.kind === 'take-twice' ? conflict.takes.map(({ id }) => id) : { ...conflict, takes: null },
  );
