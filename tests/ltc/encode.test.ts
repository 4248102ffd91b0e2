import { describe, expect, test } from 'vitest';
import type { RateId } from '../../src/time/rate.ts';
import { rateOf } from '../../src/time/rate.ts';
import { parseTimecode } from '../../src/time/timecode.ts';
import { type Said, sound } from './encode.ts';
import { readRecording } from './read-wave.ts';

const RECORDINGS: readonly (readonly [string, RateId, string, Said])[] = [
  ['clean-25', '25', '10:11:12:13', { userBits: '20261128' }],
  ['clean-24-over-midnight', '24', '23:59:58:00', {}],
  ['clean-23976-16k', '23.976', '01:00:00:00', {}],
  ['clean-30-44k1', '30', '05:06:07:08', {}],
  ['clean-2997-nondrop', '29.97', '12:00:58:20', {}],
  ['clean-2997-drop-skips', '29.97DF', '10:00:58;20', {}],
  ['clean-2997-drop-tenth-minute', '29.97DF', '10:09:58;20', {}],
];

describe('the encoder of the tests', () => {
  test.each(RECORDINGS)(
    'says bit by bit what the reference library says in %s',
    (name, rate, first, said) => {
      const { samples, sampleRate } = readRecording(name);
      const from = parseTimecode(first, rate);
      if (!from.ok) throw new Error(first);
      const { num, den } = rateOf(rate);
      const half = (sampleRate * den) / num / 160;
      const count = Math.floor(samples.length / (160 * half));
      const own = sound(from.value, count, rate, { ...said, sampleRate });
      // Each bit is two halves; the sides that the wave is on in the middle of each tell all of them.
      const halves = Array.from({ length: count * 160 }, (_, i) => Math.floor((i + 0.5) * half));
      const differing = halves.filter((at) => own[at]! > 0 !== samples[at]! > 0);
      expect(count).toBeGreaterThan(80);
      expect(differing).toEqual([]);
    },
  );
});
