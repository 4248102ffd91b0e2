import type { Carrier, Guards, OccupiedBlock, TuningRange } from '../../radio/carrier.ts';
import { type CleanPosition, cleanPositionsInSteps } from '../../radio/clean/clean-positions.ts';
import { type CleanSet, cleanSetInSteps } from '../../radio/clean/clean-set.ts';
import type { Problem, Result } from '../../shared/result.ts';

/** What a search looks for: free positions for one more pack, or a set for several at once. */
export interface SearchRequest {
  readonly carriers: readonly Carrier[];
  readonly guards: Guards;
  readonly ranges: readonly TuningRange[];
  readonly occupied: readonly OccupiedBlock[];
  readonly spacingKhz: number | undefined;
  /** 1 lists positions, more returns a set. */
  readonly count: number;
  /** How long to look for a set, in steps. */
  readonly stepBudget: number;
}

export interface Found {
  readonly positions?: readonly CleanPosition[];
  readonly set?: CleanSet;
}

/** What the worker reports while it works, and at its end. */
export type SearchNews =
  | { readonly share: number }
  | { readonly found: Found }
  | { readonly problem: Problem };

/** The search in steps; yields the fraction done. */
export function* searchSteps(request: SearchRequest): Generator<number, Result<Found>> {
  const { carriers, guards, ranges, occupied, spacingKhz, count, stepBudget } = request;
  const pack = spacingKhz === undefined ? {} : { spacingKhz };
  if (count === 1) {
    const positions = yield* cleanPositionsInSteps(carriers, guards, ranges, occupied, pack);
    return positions.ok ? { ok: true, value: { positions: positions.value } } : positions;
  }
  const options = { occupied, stepBudget, ...pack };
  const set = yield* cleanSetInSteps(count, ranges, guards, carriers, options);
  return set.ok ? { ok: true, value: { set: set.value } } : set;
}
