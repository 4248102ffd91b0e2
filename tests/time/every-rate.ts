import { RATES, type RateId } from '../../src/time/rate.ts';

export const RATE_IDS: readonly RateId[] = RATES.map(({ id }) => id);
