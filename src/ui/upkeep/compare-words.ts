import type { Offset } from '../../ltc/measure/compare.ts';
import type { LastHeard } from '../../upkeep/due/day-jams.ts';
import { msWords } from '../words/hearing.ts';
import { figureWords } from './words.ts';

/** `0.12 frames ahead ± 0.04 (4.8 ms ± 1.6 ms)`; `in step ± 0.01 (0.0 ms ± 0.4 ms)` */
export function offsetWords({ frames, ms, doubtFrames, doubtMs }: Offset): string {
  const size = Math.abs(frames).toFixed(2);
  const side = size === '0.00' ? 'in step' : `${size} frames ${frames < 0 ? 'behind' : 'ahead'}`;
  return `${side} ± ${doubtFrames.toFixed(2)} (${msWords(Math.abs(ms))} ± ${msWords(doubtMs)})`;
}

/** `+0.12 ± 0.04`, with a true minus. */
export const signedWords = (value: number, doubt: number, digits: number): string => {
  const size = Math.abs(value).toFixed(digits);
  const sign = Number(size) === 0 ? '' : value < 0 ? '−' : '+';
  return `${sign}${size} ±\u00a0${doubt.toFixed(digits)}`;
};

/** The same of a comparison that was kept. */
export const keptOffsetWords = (
  { offMs, doubtMs }: Pick<LastHeard, 'offMs' | 'doubtMs'>,
  frameMs: number,
): string => offsetWords({ ms: offMs, doubtMs, frames: offMs / frameMs, doubtFrames: doubtMs / frameMs });

/** `drifts 1.2 ppm ± 0.4, a frame apart at 18:40`; empty before there is a second comparison. */
export function driftWords({ drift }: Pick<LastHeard, 'drift'>, clock: (ms: number) => string): string {
  if (!drift) return '';
  const { ppm, doubtPpm, dueAtMs } = drift;
  if (dueAtMs === undefined) return `no drift seen beyond ${figureWords(doubtPpm, 1)} ppm`;
  return `drifts ${figureWords(Math.abs(ppm), 1)} ppm ± ${figureWords(doubtPpm, 1)}, a frame apart at ${clock(dueAtMs)}`;
}
