import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity, metres } from '../quantity.ts';

/**
 * Ohms per 100 m of one conductor at 20 °C. Plain copper by gauge from a public wire table; the limits are the
 * most the cabling standards allow (TIA-568.2 horizontal, IEC 61156-5, and the stranded cords of TIA-568.2 and
 * IEC 61156-6; all but 9.38 from memory).
 */
export const CABLES = {
  'awg-22': 5.29,
  'awg-23': 6.68,
  'awg-24': 8.42,
  'awg-26': 13.39,
  'tia-solid-limit': 9.38,
  'iec-solid-limit': 9.5,
  'tia-stranded-limit': 14.0,
  'iec-stranded-limit': 14.5,
} as const;

export type CableId = keyof typeof CABLES;

/** The rise of copper's resistance with temperature: 1 at 20 °C. Example: 60 °C gives 1.157. */
export function copperFactor(celsius: number): Result<number> {
  const problem = firstBadQuantity([{ field: 'celsius', value: celsius, min: -60, max: 120 }]);
  return problem ? fail(problem) : ok(1 + 0.00393 * (celsius - 20));
}

/** Ohms of one conductor of a network cable. Example: `tia-solid-limit`, 100 m, 20 °C gives 9.38. */
export function conductorOhms(cable: CableId, lengthMetres: number, celsius = 20): Result<number> {
  const problem = firstBadQuantity([metres(lengthMetres)]);
  if (problem) return fail(problem);
  const factor = copperFactor(celsius);
  return factor.ok ? ok((CABLES[cable] / 100) * lengthMetres * factor.value) : factor;
}

/** Feet to metres, exactly. Example: 250 ft is 76.2 m. */
export const feetToMetres = (feet: number): number => feet * 0.3048;
