import type { Day } from '../../day/model.ts';
import { type Drift, driftFrom } from '../../ltc/measure/compare.ts';
import type { RateId } from '../../time/rate.ts';
import { lastHeard } from './day-jams.ts';

/**
 * How the second of two boxes drifts against the first by what was kept of them: compared with each other, or both with
 * a third. `offMs`: how far it is ahead at `atMs`. Undefined until each was compared twice.
 */
export function pairDrift(
  day: Day,
  [one, other]: readonly [string, string],
  now: { readonly atMs: number; readonly offMs: number },
  rate: RateId,
): Drift | undefined {
  const [ofOne, ofOther] = [lastHeard(day, one, rate), lastHeard(day, other, rate)];
  if (ofOther?.from === one) return again(ofOther.drift, 1, now, rate);
  if (ofOne?.from === other) return again(ofOne.drift, -1, now, rate);
  if (!ofOne?.drift || !ofOther?.drift || ofOne.from !== ofOther.from) return undefined;
  const ppm = ofOther.drift.ppm - ofOne.drift.ppm;
  const doubtPpm = Math.hypot(ofOther.drift.doubtPpm, ofOne.drift.doubtPpm);
  return driftFrom({ ppm, doubtPpm }, now, rate);
}

const again = (
  drift: Drift | undefined,
  side: 1 | -1,
  now: { readonly atMs: number; readonly offMs: number },
  rate: RateId,
): Drift | undefined => drift && driftFrom({ ppm: side * drift.ppm, doubtPpm: drift.doubtPpm }, now, rate);
