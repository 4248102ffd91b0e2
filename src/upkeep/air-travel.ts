import { fail, ok, type Result } from '../shared/result.ts';
import { firstBadQuantity } from './quantity.ts';

/** The rules behind the answer and how old they are; they change yearly and by airline. */
export const AIR_RULES = {
  sources: 'ICAO Technical Instructions, IATA Dangerous Goods Regulations, US 49 CFR 175.10',
  edition: '2024',
} as const;

export type AirClass = 'cabin' | 'with-approval' | 'not-in-baggage';

export interface AirAnswer {
  readonly class: AirClass;
  /** The edition of the rules used; show it, always with the words to confirm with the carrier. */
  readonly edition: string;
  readonly confirmWithCarrier: true;
  /** The most spares of this size a person may carry, where the rules set one for the size. */
  readonly mostSpares?: number;
}

/**
 * How one lithium-ion battery may fly as a passenger's baggage, by watt-hours. Spares go in the cabin only, with
 * their terminals protected. Never an answer without the carrier's own.
 * Example: 98 Wh is `cabin`; 150 Wh is `with-approval`, at most two spares; 288 Wh is `not-in-baggage`.
 */
export function airClass(batteryWattHours: number): Result<AirAnswer> {
  const problem = firstBadQuantity([{ field: 'wattHours', value: batteryWattHours, min: 0.01, max: 1e6 }]);
  if (problem) return fail(problem);
  const base = { edition: AIR_RULES.edition, confirmWithCarrier: true } as const;
  if (batteryWattHours <= 100) return ok({ ...base, class: 'cabin' });
  if (batteryWattHours <= 160) return ok({ ...base, class: 'with-approval', mostSpares: 2 });
  return ok({ ...base, class: 'not-in-baggage' });
}
