import { aroundDay } from '../log-and-card/label-time.ts';
import { withPreRoll } from '../log-and-card/recorded.ts';
import { medianOf } from '../pairing/robust-line.ts';
import type { CheckedPair } from './checked-pair.ts';

/** Samples from before the button was pressed, of which the files say nothing. */
export interface PreRecord {
  readonly ms: number;
  readonly pairs: readonly CheckedPair[];
}

const LEAST_PAIRS = 3;
/** Nobody cuts so much too early at every take (common practice, no source). */
const LEAST_MS = 1500;
/** A recorder's buffer is the same at every take; hands on two buttons are not (from memory). */
const SPREAD_MS = 750;

/**
 * A pre-record that no file declares: as much as the recordings begin too early, they are too long, at every
 * take. The ends then agree, so the clocks do too.
 */
export function undeclaredPreRecord(pairs: readonly CheckedPair[], dayMs: number): PreRecord | null {
  const timed = pairs.flatMap((pair) => {
    const { logged, recorded } = pair;
    if (logged.startMs === undefined || recorded.startMs === undefined || recorded.preRollMs > 0) return [];
    if (logged.lengthMs === undefined || recorded.lengthMs === undefined) return [];
    const early = aroundDay(logged.startMs - recorded.startMs, dayMs);
    return [{ pair, early, longer: recorded.lengthMs - logged.lengthMs }];
  });
  if (timed.length < LEAST_PAIRS) return null;
  const ms = Math.round(medianOf(timed.map(({ longer }) => longer)));
  const spread = medianOf(timed.map(({ longer }) => Math.abs(longer - ms)));
  const apart = Math.abs(medianOf(timed.map(({ early }) => early)) - ms);
  if (ms < LEAST_MS || spread > SPREAD_MS || apart > SPREAD_MS) return null;
  const fits = timed.filter(
    ({ longer, early }) => Math.abs(longer - ms) <= LEAST_MS && Math.abs(early - ms) <= LEAST_MS,
  );
  return { ms, pairs: fits.map(({ pair }) => pair) };
}

/** The pairs as if the files had declared it. */
export function withPreRecord(
  pairs: readonly CheckedPair[],
  preRecord: PreRecord | null,
): readonly CheckedPair[] {
  if (!preRecord) return pairs;
  const early = new Set(preRecord.pairs);
  return pairs.map((pair) =>
    early.has(pair) ? { ...pair, recorded: withPreRoll(pair.recorded, preRecord.ms) } : pair,
  );
}
