import { fail, ok, type Result } from '../../shared/result.ts';
import type { Carrier } from '../carrier.ts';
import { carriersProblem, type RadioProblem } from '../check-input.ts';
import { analyseChecked } from './analyse.ts';
import { type Analysis, assemble, countHeld } from './analysis.ts';
import { involves } from './hit.ts';
import { hitsOfOne } from './hits-of-one.ts';

/**
 * The analysis after one carrier moved, retuned, or went on or off the air: the same result as `analyse`, in
 * the time of that carrier's products. The carrier is found by id; an unknown one is `carrier-unknown`.
 * `recheck(analysis, { ...pack, khz: 471_000 })` → ok analysis
 */
export function recheck(analysis: Analysis, changed: Carrier): Result<Analysis, RadioProblem> {
  const place = analysis.carriers.findIndex(({ id }) => id === changed.id);
  if (place < 0) return fail({ code: 'carrier-unknown', id: changed.id });
  const problem = carriersProblem([changed]);
  if (problem) return fail(problem);
  const carriers = analysis.carriers.with(place, changed);
  const { guards, options, held } = analysis;
  const fresh = held && hitsOfOne(analysis, carriers, place);
  if (!fresh || fresh.isFull) return ok(analyseChecked(carriers, guards, options));
  const kept = without(held, place);
  if (kept.length + fresh.hits.length > options.mostHeld)
    return ok(analyseChecked(carriers, guards, options));
  const sorted = merge(kept, Float64Array.from(fresh.hits).sort());
  return ok(assemble(carriers, guards, options, sorted, countHeld(sorted, carriers), true));
}

function without(held: Float64Array, place: number): Float64Array {
  const kept = new Float64Array(held.length);
  let count = 0;
  for (let at = 0; at < held.length; at += 1) {
    const hit = held[at]!;
    if (!involves(hit, place)) kept[count++] = hit;
  }
  return kept.subarray(0, count);
}

function merge(one: Float64Array, two: Float64Array): Float64Array {
  const merged = new Float64Array(one.length + two.length);
  let at = 0;
  let other = 0;
  for (let spot = 0; spot < merged.length; spot += 1) {
    const takeOne = other >= two.length || (at < one.length && one[at]! <= two[other]!);
    merged[spot] = takeOne ? one[at++]! : two[other++]!;
  }
  return merged;
}
