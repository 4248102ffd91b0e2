import { LONG } from '../browser/faults-table.ts';

/** The part of the long run's cases that is generated. */
export const SHARE = LONG ? 1 : 0.1;

/** How many generated cases each entrance gets; in the long run together at least fifty thousand. */
export const CASES = {
  dayFiles: SHARE * 10_000,
  castLists: SHARE * 10_000,
  cardFiles: SHARE * 12_000,
  deepLinks: SHARE * 20_000,
} as const;

/** What hurts somewhere: markup, scripts, formulas, names of prototypes, numbers, nesting, characters not seen. */
export const NASTY_TEXTS: readonly string[] = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '"><svg/onload=alert(1)>',
  'javascript:alert(1)',
  'data:text/html,<script>alert(1)</script>',
  '=HYPERLINK("http://other.example","x")',
  '@SUM(1+1)*cmd|',
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '{"__proto__":{"polluted":1}}',
  '{{7*7}}#{7*7}',
  '../../etc/passwd',
  '%2e%2e%2f%00',
  '%',
  '9'.repeat(400),
  '-1',
  '1e308',
  'NaN',
  'Infinity',
  '0x10',
  '[{'.repeat(90),
  '&lol;'.repeat(20),
  '\u0000\u0007\u001b[31m',
  '\u202etxt.exe\u202c',
  '\ud800',
  '\ufeff\u200b\u2028\u2029',
  'A\u0301'.repeat(80),
  '\r\nBcc: a@other.example',
  'x'.repeat(5000),
  '',
];

/** Nothing of what was read has reached what all objects share. */
export const isUnpolluted = (): boolean =>
  Object.keys(Object.prototype).length === 0 &&
  Object.getOwnPropertyNames(Object.prototype).length === 12 &&
  !('polluted' in {}) &&
  Object.keys(Array.prototype).length === 0;
