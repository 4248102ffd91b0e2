import type { Settings } from '../day/settings/settings.ts';
import { BIT_DEPTHS, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
import { isOneOf, unknownText, wordIn } from '../shared/open-word.ts';
import type { RateId } from '../time/rate.ts';

const KHZ = 1000;

export const sampleRateWords = (rate: number): string => `${rate / KHZ} kHz`;
export const bitDepthWords = (depth: Settings['bitDepth']): string =>
  !isOneOf(BIT_DEPTHS, depth) ? unknownText(depth) : depth === '32f' ? '32 bit float' : `${depth} bit`;
export const rateWords = (rate: Settings['timecodeRate']): string =>
  isOneOf(TIMECODE_RATES, rate) ? fpsWords(rate) : unknownText(rate);
export const fpsWords = (rate: RateId): string =>
  rate.endsWith('DF') ? `${rate.slice(0, -2)} fps drop-frame` : `${rate} fps`;
export const layoutWords = (layout: Settings['fileLayout']): string =>
  wordIn({ poly: 'one poly file a take', mono: 'one mono file a track' }, layout);
