import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { actionAt, byName, type DueAction } from '../due-action.ts';
import { firstBadQuantity, moment, type Quantity } from '../quantity.ts';

const MS_PER_HOUR = 3_600_000;

/** Swap at or before this fraction of the runtime: 75 to 80 % (common practice, no source). */
export const DEFAULT_MARGIN = 0.8;

/** The cells in one device: fresh at a UTC ms, and how long a set lasts, if that was measured or planned. */
export interface Cells {
  readonly device: string;
  readonly freshAtMs: number;
  readonly runtimeHours: number | undefined;
  readonly basis: 'measured' | 'planned';
}

/** The day around the cells; the meal break and wrap are left out if unknown or past. */
export interface Shift {
  readonly nowMs: number;
  readonly takeOpen: boolean;
  readonly marginFactor?: number;
  readonly mealAtMs?: number;
  readonly wrapAtMs?: number;
}

/** `past-margin`: the cells should last until then, but only by using the margin. */
export type Reach = 'lasts' | 'past-margin' | 'runs-out';

export interface CellsDue {
  readonly device: string;
  readonly basis: Cells['basis'];
  readonly freshAtMs: number;
  readonly dueAtMs: number;
  readonly emptyAtMs: number;
  readonly toMeal?: Reach;
  readonly toWrap?: Reach;
  readonly action: DueAction;
}

export interface CellsPlan {
  readonly due: readonly CellsDue[];
  readonly unknown: readonly { readonly device: string; readonly problem: Problem }[];
}

const margin = (value: number): Quantity => ({ field: 'marginFactor', value, min: 0.1, max: 1 });
const runtime = (value: number): Quantity => ({ field: 'runtimeHours', value, min: 0.05, max: 1000 });

/**
 * When each set of cells is due, soonest first, with what will not last to the meal break or wrap. A device
 * without a usable runtime goes to `unknown` with its problem. Fails only on a bad shift. Example: fresh at
 * 07:00, 5 h, margin 0.8 is due at 11:00 and empty at 12:00.
 */
export function planCells(cells: readonly Cells[], shift: Shift): Result<CellsPlan> {
  const marginFactor = shift.marginFactor ?? DEFAULT_MARGIN;
  const problem = firstBadQuantity([
    margin(marginFactor),
    moment('nowMs', shift.nowMs),
    moment('mealAtMs', shift.mealAtMs ?? 0),
    moment('wrapAtMs', shift.wrapAtMs ?? 0),
  ]);
  if (problem) return fail(problem);
  const due: CellsDue[] = [];
  const unknown: { device: string; problem: Problem }[] = [];
  for (const set of cells) {
    const one = dueOf(set, marginFactor, shift);
    if (one.ok) due.push(one.value);
    else unknown.push({ device: set.device, problem: one.problem });
  }
  due.sort((a, b) => a.dueAtMs - b.dueAtMs || byName(a.device, b.device));
  return ok({ due, unknown });
}

function dueOf(set: Cells, marginFactor: number, shift: Shift): Result<CellsDue> {
  const { device, basis, freshAtMs, runtimeHours } = set;
  if (runtimeHours === undefined) return fail({ code: 'no-runtime', device });
  const problem = firstBadQuantity([runtime(runtimeHours), moment('freshAtMs', freshAtMs)]);
  if (problem) return fail(problem);
  const dueAtMs = freshAtMs + Math.round(runtimeHours * marginFactor * MS_PER_HOUR);
  const emptyAtMs = freshAtMs + Math.round(runtimeHours * MS_PER_HOUR);
  const reachOf = (atMs: number): Reach =>
    atMs <= dueAtMs ? 'lasts' : atMs <= emptyAtMs ? 'past-margin' : 'runs-out';
  const isAhead = (atMs: number | undefined): atMs is number => atMs !== undefined && atMs > shift.nowMs;
  return ok({
    device,
    basis,
    freshAtMs,
    dueAtMs,
    emptyAtMs,
    ...(isAhead(shift.mealAtMs) && { toMeal: reachOf(shift.mealAtMs) }),
    ...(isAhead(shift.wrapAtMs) && { toWrap: reachOf(shift.wrapAtMs) }),
    action: actionAt(dueAtMs, shift.nowMs, shift.takeOpen),
  });
}

export interface SwapSpan {
  readonly freshAtMs: number;
  readonly runtimeHours: number;
  readonly untilMs: number;
  readonly marginFactor?: number;
  /** Natural pauses, such as the meal break: a swap moves back to the last one before it is due. */
  readonly pausesMs?: readonly number[];
}

/**
 * The moments a device needs fresh cells, up to and including `untilMs` (at most 48 h on), each at the last
 * pause before it is due, or when due if there is none. Example: fresh at 07:00, 5 h, margin 0.8, until 19:00
 * gives 11:00, 15:00, 19:00.
 */
export function swapTimes(span: SwapSpan): Result<readonly number[]> {
  const { freshAtMs, runtimeHours, untilMs, marginFactor = DEFAULT_MARGIN, pausesMs = [] } = span;
  const problem = firstBadQuantity([
    runtime(runtimeHours),
    margin(marginFactor),
    moment('freshAtMs', freshAtMs),
    { field: 'untilMs', value: untilMs, min: freshAtMs, max: freshAtMs + 48 * MS_PER_HOUR },
  ]);
  if (problem) return fail(problem);
  const lastsMs = Math.round(runtimeHours * marginFactor * MS_PER_HOUR);
  const swaps: number[] = [];
  for (let freshMs = freshAtMs; freshMs + lastsMs <= untilMs; ) {
    const dueMs = freshMs + lastsMs;
    const pauses = pausesMs.filter((pauseMs) => pauseMs > freshMs && pauseMs <= dueMs);
    freshMs = pauses.length > 0 ? Math.max(...pauses) : dueMs;
    swaps.push(freshMs);
  }
  return ok(swaps);
}
