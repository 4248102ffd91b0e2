import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity, type Quantity } from '../quantity.ts';

/** Fractions of a battery's rating to plan with (common practice, no source); less in the cold. */
export const USABLE_FRACTIONS = {
  'lithium-iron-phosphate': [0.8, 0.9],
  'lithium-ion': [0.8, 0.9],
  'lead-acid': [0.5, 0.5],
} as const;

const fraction = (field: string, value: number): Quantity => ({ field, value, min: 0.05, max: 1 });

/** Watt-hours of a battery from its label. Example: 14.4 V and 6.8 Ah is 97.9 Wh. */
export function wattHours(volts: number, ampHours: number): Result<number> {
  const problem = firstBadQuantity([
    { field: 'volts', value: volts, min: 0.1, max: 1000 },
    { field: 'ampHours', value: ampHours, min: 0.001, max: 10_000 },
  ]);
  return problem ? fail(problem) : ok(volts * ampHours);
}

export interface BatteryRun {
  readonly wattHours: number;
  readonly watts: number;
  readonly usable?: number;
  readonly converterEfficiency?: number;
}

/**
 * Hours a battery feeds a load; `usable` and `converterEfficiency` default to 1. For a hot-swap pair plan on
 * the smaller battery alone. Example: 98 Wh at 35 W is 2.80 h, and 2.27 h with 0.9 and 0.9.
 */
export function runtimeHours(run: BatteryRun): Result<number> {
  const { watts, usable = 1, converterEfficiency = 1 } = run;
  const problem = firstBadQuantity([
    { field: 'wattHours', value: run.wattHours, min: 0.01, max: 1e6 },
    { field: 'watts', value: watts, min: 0.001, max: 100_000 },
    fraction('usable', usable),
    fraction('converterEfficiency', converterEfficiency),
  ]);
  return problem ? fail(problem) : ok((run.wattHours * usable * converterEfficiency) / watts);
}
