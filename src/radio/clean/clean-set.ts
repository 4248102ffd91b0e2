import { fail, ok, type Result } from '../../shared/result.ts';
import type { Carrier, Guards, OccupiedBlock, TuningRange } from '../carrier.ts';
import type { RadioProblem } from '../check-input.ts';
import { cleanPositions } from './clean-positions.ts';
import { narrowestFirstSet } from './first-sets.ts';
import { greedySet, improveSet, spanOf } from './improve-set.ts';
import { commonDivisor } from './ruler-sets.ts';
import { seededBelow } from './seeded.ts';
import { type Budget, type SetSpace, spaceOf } from './set-space.ts';
import { narrowestFrom, type ShortestSpans, shortestSpans } from './shortest-spans.ts';

export interface CleanSet {
  /** Ascending. */
  readonly khz: readonly number[];
  readonly spanKhz: number;
  /** The span of always taking the lowest clean position, to compare; undefined if out of band. */
  readonly greedySpanKhz: number | undefined;
  /** Proven by full search: no narrower set exists in these ranges with these guards. */
  readonly provenShortest: boolean;
}

export interface SetOptions {
  readonly occupied: readonly OccupiedBlock[];
  /** The new packs' own spacing; by default the guards' `carrierKhz`. */
  readonly spacingKhz?: number;
  /** How long to look, in steps; the same steps give the same set on any machine. */
  readonly stepBudget: number;
  readonly seed: number;
}

export type SetProblem =
  | RadioProblem
  /** `proven`: there is none; otherwise none was found within the budget. */
  | { readonly code: 'no-clean-set'; readonly count: number; readonly proven: boolean };

export const MOST_IN_A_SET = 64;
export const DEFAULT_SET_OPTIONS: SetOptions = { occupied: [], stepBudget: 100_000_000, seed: 1 };
/** Ranges with more raster positions than this are not searched for proofs. */
const MOST_PROOF_POSITIONS = 20_000;
const STEPS_A_SLICE = 2_000_000;

/**
 * Frequencies for `count` (1 to 64) packs at once, clean with each other and with the fixed carriers, in as
 * narrow a span as can be found: exact search while the budget allows a proof, then improvement.
 * Deterministic. `cleanSet(8, [an empty band], guards all 400 on a 400 kHz raster, [])` → span 13600 kHz (34
 * steps), proven
 */
export function cleanSet(
  count: number,
  ranges: readonly TuningRange[],
  guards: Guards,
  fixed: readonly Carrier[],
  options: Partial<SetOptions> = {},
): Result<CleanSet, SetProblem> {
  const steps = cleanSetInSteps(count, ranges, guards, fixed, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, for a worker that reports progress; yields the fraction of the budget spent. */
export function* cleanSetInSteps(
  count: number,
  ranges: readonly TuningRange[],
  guards: Guards,
  fixed: readonly Carrier[],
  options: Partial<SetOptions> = {},
): Generator<number, Result<CleanSet, SetProblem>> {
  const { occupied, spacingKhz, stepBudget, seed } = { ...DEFAULT_SET_OPTIONS, ...options };
  if (!Number.isInteger(count) || count < 1 || count > MOST_IN_A_SET)
    return fail({ code: 'count-unusable', count: Number.isFinite(count) ? count : 0, most: MOST_IN_A_SET });
  const pack = spacingKhz === undefined ? {} : { spacingKhz };
  const positions = cleanPositions(fixed, guards, ranges, occupied, pack);
  if (!positions.ok) return positions;
  const [roomiest] = positions.value;
  if (!roomiest) return fail({ code: 'no-clean-set', count, proven: true });
  if (count === 1) return ok({ khz: [roomiest.khz], spanKhz: 0, greedySpanKhz: 0, provenShortest: true });
  const space = spaceOf(
    positions.value.map(({ khz }) => khz),
    guards,
    spacingKhz ?? guards.carrierKhz,
    fixed,
  );
  return yield* searchSet(space, count, usableBudget(stepBudget), seed);
}

/** NaN or an infinite budget would never be spent. */
const usableBudget = (steps: number): number =>
  Number.isFinite(steps) ? Math.max(1, Math.floor(steps)) : DEFAULT_SET_OPTIONS.stepBudget;

const shareSpent = (budget: Budget, stepBudget: number): number =>
  Math.min(1, Math.max(0, 1 - budget.left / stepBudget));

function* searchSet(
  space: SetSpace,
  count: number,
  stepBudget: number,
  seed: number,
): Generator<number, Result<CleanSet, SetProblem>> {
  const budget: Budget = { left: stepBudget };
  const stepKhz = gridStep(space);
  const greedy = greedySet(space, count, 0, { left: stepBudget });
  const greedySpanKhz = greedy && spanOf(greedy);
  const proof = proveSpans(space, count, stepKhz, budget);
  if (proof.doesNotFit) return fail({ code: 'no-clean-set', count, proven: true });
  if (proof.set && isEmptyAndEven(space, stepKhz))
    return ok({ khz: proof.set, spanKhz: spanOf(proof.set), greedySpanKhz, provenShortest: true });
  yield shareSpent(budget, stepBudget);
  const found = yield* narrow(space, count, stepKhz, greedy, proof.leastMoreKhz, stepBudget, seed, budget);
  if (!found.set) return fail({ code: 'no-clean-set', count, proven: found.isProven });
  return ok({
    khz: found.set,
    spanKhz: spanOf(found.set),
    greedySpanKhz,
    provenShortest: found.isProven,
  });
}

interface Found {
  readonly set: readonly number[] | undefined;
  readonly isProven: boolean;
}

/**
 * A first set, a short improvement for a good bound, the exact search, then improvement with what is left of
 * the budget.
 */
function* narrow(
  space: SetSpace,
  count: number,
  stepKhz: number,
  greedy: readonly number[] | undefined,
  leastMoreKhz: readonly number[],
  stepBudget: number,
  seed: number,
  budget: Budget,
): Generator<number, Found> {
  const goalKhz = leastMoreKhz[count - 1]!;
  const below = seededBelow(seed);
  let set = narrowestFirstSet(space, count, stepKhz, budget) ?? greedy;
  const improve = function* (share: number): Generator<number, void> {
    const end = budget.left * (1 - share);
    while (set && spanOf(set) > goalKhz && count > 2 && budget.left > end) {
      const slice: Budget = { left: Math.min(STEPS_A_SLICE, budget.left - end) };
      const given = slice.left;
      set = improveSet(space, set, goalKhz, leastMoreKhz, below, slice);
      budget.left -= given - slice.left;
      yield shareSpent(budget, stepBudget);
    }
  };
  yield* improve(0.2);
  if (set && spanOf(set) <= goalKhz) return { set, isProven: true };
  const exact = isEmptyAndEven(space, stepKhz)
    ? { set, isProven: false }
    : yield* searchAllStarts(space, count, set, leastMoreKhz, stepBudget, budget);
  set = exact.set;
  if (exact.isProven) return exact;
  yield* improve(1);
  return { set, isProven: set !== undefined && spanOf(set) <= goalKhz };
}

/** The exact search from every possible starting position, with two thirds of the remaining budget. */
function* searchAllStarts(
  space: SetSpace,
  count: number,
  first: readonly number[] | undefined,
  leastMoreKhz: readonly number[],
  stepBudget: number,
  budget: Budget,
): Generator<number, Found> {
  let set = first;
  const share: Budget = { left: Math.floor((budget.left * 2) / 3) };
  const rest = budget.left - share.left;
  const topKhz = space.khz.at(-1)!;
  for (let from = 0; from < space.khz.length; from += 1) {
    const widest = set ? spanOf(set) - 1 : topKhz - space.khz[0]!;
    const narrowest = narrowestFrom(space, from, count, widest, leastMoreKhz, share);
    set = narrowest.set ?? set;
    budget.left = rest + share.left;
    if (!narrowest.isComplete) return { set, isProven: false };
    yield shareSpent(budget, stepBudget);
  }
  return { set, isProven: true };
}

/** The widest step that all positions lie on. */
const gridStep = ({ khz }: SetSpace): number =>
  khz.reduce((step, at) => commonDivisor(at - khz[0]!, step), 0) || 1;

const isEmptyAndEven = ({ khz, fixed }: SetSpace, stepKhz: number): boolean =>
  khz.at(-1)! - khz[0]! === (khz.length - 1) * stepKhz &&
  fixed.every(({ victim, transmitting }) => !victim && !transmitting);

/**
 * Bounds from the same band when empty, where every set may begin at the bottom; three quarters of the budget
 * at most.
 */
function proveSpans(space: SetSpace, count: number, stepKhz: number, budget: Budget): ShortestSpans {
  const length = (space.khz.at(-1)! - space.khz[0]!) / stepKhz + 1;
  if (length > MOST_PROOF_POSITIONS)
    return { leastMoreKhz: new Array(count + 1).fill(0), set: undefined, doesNotFit: false };
  const share: Budget = { left: Math.floor(budget.left * 0.75) };
  const rest = budget.left - share.left;
  const whole = emptyLike(space, stepKhz, length);
  const greedy = greedySet(whole, count, 0, share);
  // No narrower set extends beyond the greedy one, and shorter ranges are searched faster.
  const needed = greedy ? emptyLike(space, stepKhz, spanOf(greedy) / stepKhz + 1) : whole;
  const spans = shortestSpans(needed, count, greedy ?? [], share);
  budget.left = rest + share.left;
  return spans;
}

const emptyLike = ({ khz, guards, spacingKhz }: SetSpace, stepKhz: number, length: number): SetSpace =>
  spaceOf(
    Array.from({ length }, (_, step) => khz[0]! + step * stepKhz),
    guards,
    spacingKhz,
    [],
  );
