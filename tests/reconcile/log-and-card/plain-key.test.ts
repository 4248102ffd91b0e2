import { describe, expect, test } from 'vitest';
import {
  aroundDay,
  dayAxis,
  labelDayMs,
  nearestFrames,
  samplesMs,
  stampMs,
} from '../../../src/reconcile/log-and-card/label-time.ts';
import {
  cutText,
  plainKey,
  slateKey,
  stemKey,
  stemOf,
  takeNumber,
} from '../../../src/reconcile/log-and-card/plain-key.ts';

describe('texts as they are compared', () => {
  test.each([
    ['24B', '24B'],
    ['024b', '24B'],
    ['Sc. 24-b', '24B'],
    ['scene 24 B', '24B'],
    ['SC', 'SC'],
    ['A24C', 'A24C'],
    ['R-007', 'R7'],
    ['1007', '1007'],
    ['0', '0'],
    ['２４Ｂ', '24B'],
    [' ', ''],
  ])('slate %j is %j', (text, key) => {
    expect(slateKey(text)).toBe(key);
  });

  test.each([
    ['3', 3],
    ['T03', 3],
    ['3 PU', 3],
    ['WT2', 2],
    ['', undefined],
    ['ten', undefined],
    ['10000', undefined],
    [undefined, undefined],
  ])('take %j is %j', (text, number) => {
    expect(takeNumber(text)).toBe(number);
  });

  test('names lose their path and ending', () => {
    expect(stemOf('CARD/DAY 4\\24bt3.WAV')).toBe('24bt3');
    expect(stemKey('a/24bt3.wav')).toBe('24BT3');
    expect(stemOf('v1.2 final')).toBe('v1.2 final');
    expect(plainKey('  Ines\u00a0 B ')).toBe('INES B');
  });

  test('a text is cut between characters', () => {
    expect(cutText('abc', 3)).toBe('abc');
    expect(cutText('ab𝟚', 3)).toBe('ab');
    expect(cutText('𝟚𝟚𝟚', 4)).toBe('𝟚𝟚');
  });
});

describe('times as they are compared', () => {
  test('frames and samples of one label are the same milliseconds (10:00:00:00 at 24000/1001: 1729728000 at 48 kHz)', () => {
    expect(stampMs({ frames: 864_000, rate: '23.976' })).toBe(samplesMs(1_729_728_000, 48_000));
    expect(labelDayMs('29.97DF')).toBeCloseTo(86_399_913.6, 6);
    expect(nearestFrames(-1001, '23.976')).toBe(-24);
  });

  test('times go the short way round midnight', () => {
    const day = labelDayMs('25');
    expect(aroundDay(day - 1000, day)).toBe(-1000);
    expect(aroundDay(1000 - day, day)).toBe(1000);
    expect(aroundDay(day / 2, day)).toBe(day / 2);
    expect(aroundDay(-day / 2, day)).toBe(day / 2);
  });

  test('a night stands in a row, cut where nothing was recorded for longest', () => {
    const hour = 3_600_000;
    const times = [22, 23, 1, 4, 18].map((at) => at * hour);
    const axis = dayAxis(times, 24 * hour);
    const sorted = [...times].sort((a, b) => axis.at(a) - axis.at(b));
    expect(sorted.map((ms) => ms / hour)).toEqual([18, 22, 23, 1, 4]);
    expect(dayAxis([], 24 * hour).at(hour)).toBe(hour);
    expect(axis.at(-hour)).toBe(axis.at(23 * hour));
  });
});
