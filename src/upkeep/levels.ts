import { fail, ok, type Result } from '../shared/result.ts';
import { firstBadQuantity } from './quantity.ts';

/** 0 dBu: the voltage of 1 mW in 600 ohms, the square root of 0.6. */
const VOLTS_AT_0_DBU = Math.sqrt(0.6);

const level = (field: string, value: number) => ({ field, value, min: -200, max: 200 });

/** A level in dBu (-200 to 200) as volts, RMS. Example: +4 dBu is 1.2277 V. */
export function dbuToVolts(dbu: number): Result<number> {
  const problem = firstBadQuantity([level('dbu', dbu)]);
  return problem ? fail(problem) : ok(VOLTS_AT_0_DBU * 10 ** (dbu / 20));
}

/** Volts, RMS, above zero, as a level in dBu. Example: 1.2277 V is +4 dBu. */
export function voltsToDbu(volts: number): Result<number> {
  const problem = firstBadQuantity([{ field: 'volts', value: volts, min: 1e-9, max: 1e9 }]);
  return problem ? fail(problem) : ok(20 * Math.log10(volts / VOLTS_AT_0_DBU));
}

/** A level in dBu as dBV (0 dBV is 1 V). Example: 0 dBu is -2.2185 dBV. */
export function dbuToDbv(dbu: number): Result<number> {
  const problem = firstBadQuantity([level('dbu', dbu)]);
  return problem ? fail(problem) : ok(dbu + 20 * Math.log10(VOLTS_AT_0_DBU));
}

/** A level in dBV as dBu. Example: -10 dBV is -7.78 dBu. */
export function dbvToDbu(dbv: number): Result<number> {
  const problem = firstBadQuantity([level('dbv', dbv)]);
  return problem ? fail(problem) : ok(dbv - 20 * Math.log10(VOLTS_AT_0_DBU));
}

/** A plant's line-up: the analogue level of the line-up tone, and where that tone sits below digital full scale. */
export interface LineUp {
  readonly name: string;
  readonly toneDbu: number;
  readonly toneDbfs: number;
}

/** The two common line-ups: EBU R68 (tone at 0 dBu here), and SMPTE RP 155 with +4 dBu. */
export const LINE_UPS: readonly LineUp[] = [
  { name: 'EBU R68', toneDbu: 0, toneDbfs: -18 },
  { name: 'SMPTE RP 155', toneDbu: 4, toneDbfs: -20 },
];

/** The analogue level at digital full scale, in dBu. Example: EBU R68 with 0 dBu gives +18. */
export function fullScaleDbu(lineUp: LineUp): Result<number> {
  const problem = firstBadQuantity([
    level('toneDbu', lineUp.toneDbu),
    { field: 'toneDbfs', value: lineUp.toneDbfs, min: -60, max: 0 },
  ]);
  return problem ? fail(problem) : ok(lineUp.toneDbu - lineUp.toneDbfs);
}
