import { describe, expect, test } from 'vitest';
import { type Card, cardLeft } from '../../../src/upkeep/due/card-left.ts';
import {
  bytesPerSecond,
  hoursIn,
  minutesToFileLimit,
  type RecordingFormat,
  SIZE_UNITS,
} from '../../../src/upkeep/due/media.ts';
import { codeOf, printed, unwrap } from '../unwrap.ts';

const HOUR = 3_600_000;
const format = (tracks: number, bits: 24 | 32, sampleRate = 48_000): RecordingFormat => ({
  tracks,
  sampleRate,
  bits,
});

describe('media rates', () => {
  // Arithmetic: tracks × sample rate × bytes a sample. Columns: bytes/s, GB/h, h/GB, h to 4 GiB, h in 64 GB.
  test.each<[number, 24 | 32, number, string, string, string, string]>([
    [1, 24, 144_000, '0.5184', '1.929', '8.285', '123.46'],
    [2, 24, 288_000, '1.0368', '0.9645', '4.143', '61.73'],
    [8, 24, 1_152_000, '4.1472', '0.2411', '1.036', '15.43'],
    [8, 32, 1_536_000, '5.5296', '0.1808', '0.777', '11.57'],
    [12, 24, 1_728_000, '6.2208', '0.1608', '0.690', '10.29'],
    [16, 24, 2_304_000, '8.2944', '0.1206', '0.518', '7.72'],
    [16, 32, 3_072_000, '11.0592', '0.0904', '0.388', '5.79'],
    [32, 32, 6_144_000, '22.1184', '0.0452', '0.194', '2.89'],
  ])(
    'of %i tracks at %i bit, 48 kHz are as the table prints them',
    (tracks, bits, rate, perHour, perGb, toLimit, in64) => {
      const one = format(tracks, bits);
      expect(unwrap(bytesPerSecond(one))).toBe(rate);
      expect(((unwrap(bytesPerSecond(one)) * 3600) / SIZE_UNITS.GB).toFixed(4)).toBe(perHour);
      expect(printed(hoursIn(SIZE_UNITS.GB, one), perGb.length - 2)).toBe(perGb);
      expect((unwrap(minutesToFileLimit(one)) / 60).toFixed(3)).toBe(toLimit);
      expect(printed(hoursIn(64 * SIZE_UNITS.GB, one), 2)).toBe(in64);
    },
  );

  // The size field of RIFF/WAVE is 32 bits (Multimedia Programming Interface 1.0; EBU Tech 3306).
  test.each<[number, 24 | 32, number, string, string]>([
    [2, 24, 48_000, '248.55', '124.28'],
    [8, 24, 48_000, '62.14', '31.07'],
    [10, 24, 48_000, '49.71', '24.86'],
    [16, 24, 48_000, '31.07', '15.53'],
    [16, 32, 48_000, '23.30', '11.65'],
    [8, 24, 96_000, '31.07', '15.53'],
  ])(
    'of %i tracks at %i bit, %i Hz reach 4 GiB in %s min and 2 GiB in %s',
    (tracks, bits, rate, four, two) => {
      const one = format(tracks, bits, rate);
      expect(printed(minutesToFileLimit(one, '4 GiB'), 2)).toBe(four);
      expect(printed(minutesToFileLimit(one, '2 GiB'), 2)).toBe(two);
    },
  );

  test('lose about 0.01 min to 1 MiB of headers on 10 tracks', () => {
    const lost =
      unwrap(minutesToFileLimit(format(10, 24))) -
      unwrap(minutesToFileLimit(format(10, 24), '4 GiB', 2 ** 20));
    expect(lost.toFixed(2)).toBe('0.01');
  });

  test('tell GB from GiB: 7.4 % apart', () => {
    expect([SIZE_UNITS.GB, SIZE_UNITS.GiB]).toEqual([1_000_000_000, 1_073_741_824]);
    expect(((SIZE_UNITS.GiB / SIZE_UNITS.GB - 1) * 100).toFixed(1)).toBe('7.4');
  });

  test('refuse no tracks, half a track and no rate', () => {
    expect(codeOf(bytesPerSecond(format(0, 24)))).toBe('quantity-out-of-range');
    expect(codeOf(bytesPerSecond(format(1.5, 24)))).toBe('quantity-not-whole');
    expect(codeOf(bytesPerSecond(format(1, 24, 0)))).toBe('quantity-out-of-range');
    expect(codeOf(bytesPerSecond(format(1, 24, Number.NaN)))).toBe('quantity-not-finite');
    expect(codeOf(hoursIn(-1, format(1, 24)))).toBe('quantity-out-of-range');
  });
});

describe('what is left on a card', () => {
  const card: Card = {
    card: 'CF 1',
    capacityBytes: 64e9,
    usedBytes: 0,
    format: format(8, 24),
    recordedMs: 2 * HOUR,
  };
  const day = { nowMs: 6 * HOUR, callAtMs: 0, takeOpen: false };

  test('follows from the recorded time of the day, headers included', () => {
    const left = unwrap(cardLeft(card, day));
    // 64 GB / (4.1472 GB/h × 1.01) - 2 h
    expect(left.hoursLeft.toFixed(2)).toBe('13.28');
    expect(left.pace.toFixed(3)).toBe('0.333');
    expect((left.fullAtMs! / HOUR).toFixed(1)).toBe('45.8');
    expect((left.dueAtMs! / HOUR).toFixed(1)).toBe('44.3');
    expect(left.action).toBe('later');
  });

  test('tells whether it lasts to wrap at the pace of the day', () => {
    expect(unwrap(cardLeft(card, { ...day, wrapAtMs: 12 * HOUR })).lastsToWrap).toBe(true);
    const small = { ...card, capacityBytes: 16e9 };
    // 1.82 h left, 1.32 h to the reserve, a third of the day recorded: about 4 h.
    expect(unwrap(cardLeft(small, { ...day, wrapAtMs: 9 * HOUR })).lastsToWrap).toBe(true);
    expect(unwrap(cardLeft(small, { ...day, wrapAtMs: 12 * HOUR })).lastsToWrap).toBe(false);
  });

  test('claims nothing about wrap before the first take unless it would hold recording all the way', () => {
    const fresh = { ...card, recordedMs: 0 };
    expect(unwrap(cardLeft(fresh, { ...day, wrapAtMs: 12 * HOUR })).lastsToWrap).toBe(true);
    expect(
      unwrap(cardLeft({ ...fresh, capacityBytes: 8e9 }, { ...day, wrapAtMs: 12 * HOUR })),
    ).not.toHaveProperty('lastsToWrap');
  });

  test('asks for a new card once the reserve is begun, at the cut if a take is open', () => {
    const nearlyFull = { ...card, usedBytes: 54.5e9 };
    expect(unwrap(cardLeft(nearlyFull, day)).action).toBe('now');
    expect(unwrap(cardLeft(nearlyFull, { ...day, takeOpen: true })).action).toBe('at-cut');
  });

  test('is nothing, not less, when more was recorded than it holds', () => {
    const left = unwrap(cardLeft({ ...card, capacityBytes: 1e9 }, day));
    expect([left.bytesLeft, left.hoursLeft]).toEqual([0, 0]);
  });

  test('is refused for a card of no size or used beyond its size', () => {
    expect(codeOf(cardLeft({ ...card, capacityBytes: 0 }, day))).toBe('quantity-out-of-range');
    expect(codeOf(cardLeft({ ...card, usedBytes: 65e9 }, day))).toBe('quantity-out-of-range');
  });
});
