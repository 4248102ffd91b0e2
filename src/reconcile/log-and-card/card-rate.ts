import { TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { RateId } from '../../time/rate.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { commonest } from './commonest.ts';

/** The rate that most files say; the one a day begins with where none of them does. */
export function rateOfCard(recordings: readonly Recording[]): RateId {
  const rate = commonest(recordings.map((one) => one.rate));
  return rate !== undefined && isOneOf(TIMECODE_RATES, rate) ? rate : '25';
}
