import { describe, expect, test } from 'vitest';
import { frameFinder } from '../../src/ltc/decoding/frame-finder.ts';
import { neighbours } from '../../src/ltc/decoding/neighbours.ts';
import { hasEvenZeros, labelOf, userBitsOf } from '../../src/ltc/frames/frame.ts';
import { frameOfLabel, labelOfFrame } from '../../src/time/label.ts';
import { framesPerDay, type RateId } from '../../src/time/rate.ts';
import { LONG } from '../browser/faults-table.ts';
import { encodeFrame, encodeWords } from './encode.ts';

// At 23.976 and at 29.97 without drop-frame the bits are those of 24 and of 30.
const COUNTS: readonly RateId[] = ['24', '25', '29.97DF', '30'];

describe('every frame of a day', () => {
  test.each(COUNTS)('goes into words and comes back at %s', (rate) => {
    const frames = framesPerDay(rate);
    const wrong: number[] = [];
    for (let frame = 0; frame < frames; frame += 1) {
      const words = encodeWords(labelOfFrame(frame, rate), rate);
      const label = labelOf(words);
      if (!label || frameOfLabel(label, rate) !== frame || !hasEvenZeros(words)) wrong.push(frame);
    }
    expect(frames).toBeGreaterThan(2_000_000);
    expect(wrong).toEqual([]);
  });

  test.each(COUNTS)('follows the one before it, bit by bit, at %s', { timeout: 600_000 }, (rate) => {
    const frames = framesPerDay(rate);
    const said = { userBits: '0F1E2D3C', colour: true };
    // In short, the two seconds around every tenth minute and the one after it; through midnight in any case.
    const starts = LONG
      ? [0]
      : Array.from({ length: 288 }, (_, i) => frameOfMinute(Math.ceil(i / 2) * 10 - (i % 2), rate));
    const length = LONG ? frames : 60;
    let [given, wrong] = [0, 0];
    for (const start of starts) {
      let next = start - 30 + frames;
      const finder = frameFinder(
        neighbours((frame) => {
          if (frameOfLabel(frame.label, rate) !== next % frames || frame.userBits !== said.userBits)
            wrong += 1;
          next += 1;
          given += 1;
        }),
      );
      for (let i = 0; i <= length; i += 1) {
        const bits = encodeFrame(labelOfFrame(start - 30 + i, rate), rate, said);
        for (let bit = 0; bit < 80; bit += 1) finder.bit(bits[bit] as 0 | 1, 80 * i + bit + 1, 1);
      }
    }
    expect({ given, wrong }).toEqual({ given: starts.length * (length + 1), wrong: 0 });
  });

  test('user bits come back from every group', () => {
    for (const userBits of ['12345678', '9ABCDEF0', 'F0000000', '0000000F']) {
      expect(userBitsOf(encodeWords(labelOfFrame(0, '25'), '25', { userBits }))).toBe(userBits);
    }
  });

  test('digits out of range are no time', () => {
    const words = encodeWords({ hours: 23, minutes: 59, seconds: 59, frames: 29 }, '30');
    expect(labelOf(words)).toEqual({ hours: 23, minutes: 59, seconds: 59, frames: 29 });
    // Units of ten and more, 60 seconds and minutes, 24 and 30 hours, 30 frames.
    for (const [low, high] of [
      [0x0000_000a, 0],
      [0x0000_0300, 0],
      [0x000a_0000, 0],
      [0x0600_0000, 0],
      [0, 0x0000_000a],
      [0, 0x0000_0600],
      [0, 0x000a_0000],
      [0, 0x0204_0000],
      [0, 0x0300_0000],
    ] as const) {
      expect(labelOf({ low, high }), `${low.toString(16)} ${high.toString(16)}`).toBeNull();
    }
  });
});

const frameOfMinute = (minute: number, rate: RateId): number =>
  frameOfLabel(
    {
      hours: Math.floor(minute / 60) % 24,
      minutes: ((minute % 60) + 60) % 60,
      seconds: 0,
      frames: rate === '29.97DF' && minute % 10 !== 0 ? 2 : 0,
    },
    rate,
  );
