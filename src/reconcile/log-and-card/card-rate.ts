import { TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { RateId } from '../../time/rate.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { commonest } from './commonest.ts';

/** The most common rate of the files; the default rate of a day if they have none. */
export function rateOfCard(recordings: readonly Recording[]): RateId {
  const rate = commonest(recordings.map((one) => one.rate));
  return rate !== undefined && isOneOf(TIMECODE_RATES, rate) ? rate : '25';
}
