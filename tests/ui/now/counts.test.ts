import { expect, test } from 'vitest';
import type { Summary } from '../../../src/day/answers/summary.ts';
import { countsOf } from '../../../src/ui/now/counts.ts';

const NONE: Summary = {
  sources: 0,
  tracksUsed: 0,
  tracks: 0,
  free: 0,
  gangs: 0,
  clashes: 0,
  muted: 0,
  unrecorded: [],
};
const words = (some: Partial<Summary>): string =>
  countsOf({ ...NONE, ...some })
    .map((part) => part.join(' '))
    .join(', ');

test('one of a thing is named in the singular, and none or several in the plural', () => {
  expect(words({ sources: 1, tracksUsed: 1, tracks: 1, free: 1, gangs: 1, muted: 1 })).toBe(
    '1 source, 1 of 1 iso, 1 free, 1 gang, 1 muted',
  );
  expect(words({ sources: 10, tracksUsed: 9, tracks: 15, free: 2, gangs: 3, muted: 2 })).toBe(
    '10 sources, 9 of 15 isos, 2 free, 3 gangs, 2 muted',
  );
  expect(words({})).toBe('0 sources, 0 of 0 isos, 0 free, 0 gangs');
});
