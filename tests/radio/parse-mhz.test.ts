import { expect, test } from 'vitest';
import { formatMhz, parseMhz } from '../../src/radio/parse-mhz.ts';

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
])('%j is %i kHz', (text, khz) => {
  expect(parseMhz(text)).toEqual({ ok: true, value: khz });
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
  ['9999999999', 'frequency-unreadable'],
  ['470.1255', 'frequency-finer-than-khz'],
  ['0', 'frequency-not-positive'],
  ['-0', 'frequency-not-positive'],
  ['-470.1', 'frequency-not-positive'],
  ['0.5', 'frequency-too-low'],
  ['470100', 'frequency-too-high'],
])('%j is refused as %s', (text, code) => {
  expect(parseMhz(text)).toMatchObject({ ok: false, problem: { code } });
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
  expect([formatMhz(-500), formatMhz(470_100), formatMhz(7)]).toEqual(['-0.500', '470.100', '0.007']);
});
