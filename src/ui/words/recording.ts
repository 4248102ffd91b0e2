import { BIT_DEPTHS, type Header, TIMECODE_RATES } from '../../day/model.ts';
import { isOneOf, unknownText } from '../../shared/open-word.ts';

const KHZ = 1000;

/** `'25 fps'`, `'29.97 fps drop-frame'`. */
export function rateWords(rate: Header['timecodeRate']): string {
  if (!isOneOf(TIMECODE_RATES, rate)) return unknownText(rate);
  return rate.endsWith('DF') ? `${rate.slice(0, -2)} fps drop-frame` : `${rate} fps`;
}

/** `'48 kHz'`. */
export const sampleRateWords = (rate: number): string => `${rate / KHZ} kHz`;

/** `'24-bit'`, `'32-bit float'`. */
export function bitDepthWords(depth: Header['bitDepth']): string {
  if (!isOneOf(BIT_DEPTHS, depth)) return unknownText(depth);
  return depth === '32f' ? '32-bit float' : `${depth}-bit`;
}
