import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity } from '../quantity.ts';

/** What a constant-power load sees at the end of a lead. */
export interface LoadPoint {
  readonly loadVolts: number;
  readonly amps: number;
  readonly lossWatts: number;
}

/**
 * A load that always takes `watts`, fed from `volts` through `ohms` (the whole loop): the stable solution of
 * V·I = P + I²·R. More than the lead can carry is `load-beyond-lead`, with the maximum. Example: 50 V, 12.5
 * ohm, 25.5 W gives 42.5 V and 0.6 A.
 */
export function loadPoint(volts: number, ohms: number, watts: number): Result<LoadPoint> {
  const problem = firstBadQuantity([
    { field: 'volts', value: volts, min: 0.1, max: 1000 },
    { field: 'ohms', value: ohms, min: 0, max: 10_000 },
    { field: 'watts', value: watts, min: 0.001, max: 10_000 },
  ]);
  if (problem) return fail(problem);
  const underRoot = volts * volts - 4 * ohms * watts;
  if (underRoot < 0)
    return fail({ code: 'load-beyond-lead', watts, mostWatts: (volts * volts) / (4 * ohms) });
  const loadVolts = (volts + Math.sqrt(underRoot)) / 2;
  const amps = watts / loadVolts;
  return ok({ loadVolts, amps, lossWatts: amps * amps * ohms });
}
