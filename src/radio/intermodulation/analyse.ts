import { fail, ok, type Result } from '../../shared/result.ts';
import type { Carrier, Guards } from '../carrier.ts';
import { carriersProblem, guardsProblem, occupiedProblem, type RadioProblem } from '../check-input.ts';
import { type Analysis, type AnalysisOptions, assemble, countHeld, DEFAULT_OPTIONS } from './analysis.ts';
import { countExactly } from './count-exactly.ts';
import { addHit, addWindow, newHitList, sortHits } from './hit-list.ts';
import { lanesOf, walkProducts, walkSpacing } from './walk-products.ts';

/**
 * Every spacing, 2A-B, A+B-C and 3A-2B hit of the transmitting carriers on the listening ones, in whole kHz;
 * a hit is strictly nearer than its guard. Up to 512 carriers; one that neither transmits nor listens is
 * ignored. Fails on invalid input. `analyse([at 500000, 501000, 502000], guards)` → ok, with 2·501000 -
 * 500000 on 502000 among its hits
 */
export function analyse(
  carriers: readonly Carrier[],
  guards: Guards,
  options: Partial<AnalysisOptions> = {},
): Result<Analysis, RadioProblem> {
  const all = { ...DEFAULT_OPTIONS, ...options };
  const problem = carriersProblem(carriers) ?? guardsProblem(guards) ?? occupiedProblem(all.occupied);
  return problem ? fail(problem) : ok(analyseChecked(carriers, guards, all));
}

/** The same for input that was already checked. */
export function analyseChecked(
  carriers: readonly Carrier[],
  guards: Guards,
  options: AnalysisOptions,
): Analysis {
  const { includeOwnVictims, mostHeld } = options;
  const lanes = lanesOf(carriers);
  const list = newHitList();
  walkSpacing(carriers, guards, (source, victim, distance) =>
    addHit(list, mostHeld, 0, distance, source, 0, 0, victim),
  );
  walkProducts(
    lanes,
    guards,
    (family, a, b, c, product, lo, hi) =>
      addWindow(list, mostHeld, includeOwnVictims, lanes.listeners, family, a, b, c, product, lo, hi),
    () => list.isFull,
  );
  const sorted = sortHits(list);
  const counts = list.isFull ? countExactly(carriers, lanes, guards, options) : countHeld(sorted, carriers);
  return assemble(carriers, guards, options, sorted, counts, !list.isFull);
}
