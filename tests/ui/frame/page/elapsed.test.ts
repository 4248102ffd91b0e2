import { expect, test } from 'vitest';
import { elapsed } from '../../../../src/ui/frame/page/elapsed.ts';

test('what has passed of an open take is printed as its length will be', () => {
  expect([0, 42_900, 61_000, 3_600_000, -5].map(elapsed)).toEqual([
    '0:00',
    '0:42',
    '1:01',
    '1:00:00',
    '0:00',
  ]);
});
