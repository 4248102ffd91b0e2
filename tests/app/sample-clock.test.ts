import { expect, test } from 'vitest';
import { loadSample } from '../../sample-days/load.ts';
import { clockOf } from '../../src/app/sample-clock.ts';
import { dueCount, upkeepAt } from '../../src/upkeep/due/day-due.ts';
import { MORNING, speaker } from '../day/say.ts';

const at = (iso: string, zone = -480) => ({ now: () => ({ atMs: Date.parse(iso), zone }) });
const sample = loadSample('full');
// The last take of its story is noted at 04:02:20 in its own zone, UTC+1.
const LEFT = '2026-11-20T03:02:20.080Z';

test.each(['2026-03-01T18:30:00Z', '2027-06-01T04:00:00Z'])(
  'a sample day looked at at %s goes on eight minutes after it was left, in its own zone',
  (iso) => {
    const now = { ms: Date.parse(iso) };
    const clock = clockOf(() => sample, { now: () => ({ atMs: now.ms, zone: -480 }) });
    expect(clock.now()).toEqual({ atMs: Date.parse(LEFT) + 8 * 60_000, zone: 60 });
    now.ms += 90_000;
    expect(clock.now().atMs).toBe(Date.parse(LEFT) + 8 * 60_000 + 90_000);
    expect(dueCount(upkeepAt(sample, clock.now().atMs))).toBe(3);
  },
);

test('within six hours of its last entry it goes by the clock of the phone, as a real day always does', () => {
  const near = at('2026-11-20T05:00:00Z');
  expect(clockOf(() => sample, near).now()).toEqual(near.now());
  const real = speaker('other1', MORNING);
  real.say({ kind: 'day-described', fields: { production: 'Harbour' } });
  const late = at('2031-01-01T00:00:00Z');
  expect(clockOf(real.day, late).now()).toEqual(late.now());
});
