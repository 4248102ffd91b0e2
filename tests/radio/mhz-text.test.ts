import { expect, test } from 'vitest';
import { formatMhz, parseMhz, parseMhzOrNone } from '../../src/radio/mhz-text.ts';

test.each([
  ['470.1', 470_100],
  ['470,1', 470_100],
  ['470.125', 470_125],
  [' 470.5 MHz ', 470_500],
  ['470', 470_000],
  ['470.', 470_000],
  ['0470.100000', 470_100],
  ['+470.1', 470_100],
  ['2400.001', 2_400_001],
  ['26,1', 26_100],
  ['606.25', 606_250],
  ['606,250 MHz', 606_250],
  ['606.25mhz', 606_250],
  ['2400.', 2_400_000],
  ['606.2500000', 606_250],
  ['606.1250000000000', 606_125],
  ['1', 1_000],
  ['9.999', 9_999],
  ['10000.001', 10_000_001],
  ['100000', 100_000_000],
])('%j is %i kHz', (text, khz) => {
  expect(parseMhz(text)).toEqual({ ok: true, value: khz });
  expect(parseMhzOrNone(text)).toEqual({ ok: true, value: khz });
});

test.each(['', '  '])('%j takes a frequency away where there may be none', (text) => {
  expect(parseMhzOrNone(text)).toEqual({ ok: true, value: null });
});

test.each([
  ['', 'frequency-empty'],
  ['   ', 'frequency-empty'],
  ['abc', 'frequency-unreadable'],
  ['470.1.2', 'frequency-unreadable'],
  ['1,435.000', 'frequency-unreadable'],
  ['.5', 'frequency-unreadable'],
  ['4.701e2', 'frequency-unreadable'],
  ['NaN', 'frequency-unreadable'],
  ['Infinity', 'frequency-unreadable'],
  ['470.1 kHz', 'frequency-unreadable'],
  ['ch 42', 'frequency-unreadable'],
  [' MHz', 'frequency-unreadable'],
  ['9999999999', 'frequency-unreadable'],
  ['470.1255', 'frequency-finer-than-khz'],
  ['606.1251', 'frequency-finer-than-khz'],
  ['0', 'frequency-not-positive'],
  ['-0', 'frequency-not-positive'],
  ['-470.1', 'frequency-not-positive'],
  ['0.5', 'frequency-too-low'],
  ['0.999', 'frequency-too-low'],
  ['100000.001', 'frequency-too-high'],
  ['470100', 'frequency-too-high'],
])('%j is refused as %s', (text, code) => {
  expect(parseMhz(text)).toMatchObject({ ok: false, problem: { code } });
  if (text.trim() !== '') expect(parseMhzOrNone(text)).toEqual(parseMhz(text));
});

test('every kHz of a TV band survives being written and read', () => {
  const lost: number[] = [];
  for (let khz = 470_000; khz <= 476_000; khz += 1) {
    const read = parseMhz(formatMhz(khz));
    if (!read.ok || read.value !== khz) lost.push(khz);
  }
  expect(lost).toEqual([]);
});

test('a product below zero is written with its sign', () => {
  expect([-500, 470_100, 7, 999, 606_001, 10_000_001].map(formatMhz)).toEqual([
    '-0.500',
    '470.100',
    '0.007',
    '0.999',
    '606.001',
    '10000.001',
  ]);
});
