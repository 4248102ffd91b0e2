import { expect, test } from 'vitest';
import type { DayOutline } from '../../../src/app/ports.ts';
import { rollMatters } from '../../../src/ui/wrap/roll-matters.ts';
import { speaker, take } from '../../day/say.ts';

const outline = (more: Partial<DayOutline>): DayOutline =>
  ({ id: 'other', sample: false, production: '', label: 'Day 3', date: '2026-10-06', ...more }) as DayOutline;

test('a roll that another real day on this phone bears too is an open matter', () => {
  const phone = speaker();
  phone.say({ kind: 'roll-changed', roll: 'R7' });
  phone.say(take('24', 0, 1));
  const day = phone.day();
  expect(day.rolls).toEqual(['R7']);
  expect(rollMatters(day, [outline({ rolls: ['R7', 'R8'] })])).toEqual([
    'Roll R7 is also a roll of Day 3, 2026-10-06.',
  ]);
  expect(rollMatters(day, [outline({ rolls: ['R8'] }), outline({})])).toEqual([]);
  expect(
    rollMatters(day, [outline({ rolls: ['R7'], sample: true }), outline({ id: day.id, rolls: ['R7'] })]),
  ).toEqual([]);
});
