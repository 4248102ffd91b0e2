import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import {
  type FollowedClock,
  nextWholeSecond,
  timecodeAt,
  timeOfDayClock,
} from '../../src/time/followed-clock.ts';
import { droppedAt, labelOfFrame } from '../../src/time/label.ts';
import { framesPerDay, type RateId, rateOf } from '../../src/time/rate.ts';
import { formatTimecode, framesToMs, parseTimecode } from '../../src/time/timecode.ts';
import { RATE_IDS } from './every-rate.ts';

const SEED = 20261007;
const TAP = Date.UTC(2026, 9, 7, 18, 45, 0);

/** The clock as tied by one tap. */
const followAt = (frames: number, rate: RateId, atMs: number): FollowedClock => ({
  frames: frames % framesPerDay(rate),
  rate,
  atMs,
});

const followLabel = (text: string, rate: RateId, atMs = TAP) => {
  const read = parseTimecode(text, rate);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return followAt(read.value, rate, atMs);
};
const showing = (clock: FollowedClock, nowMs: number): string =>
  formatTimecode(timecodeAt(clock, nowMs), clock.rate);

describe('the followed clock', () => {
  test('shows the tapped label at the tap and until its frame is over', () => {
    const clock = followLabel('21:32:07:12', '25');
    expect(showing(clock, TAP)).toBe('21:32:07:12');
    expect(showing(clock, TAP + 39)).toBe('21:32:07:12');
    expect(showing(clock, TAP + 40)).toBe('21:32:07:13');
  });

  test('runs on past midnight of the labels', () => {
    expect(showing(followLabel('23:59:50:00', '25'), TAP + 20_000)).toBe('00:00:10:00');
    expect(showing(followLabel('23:59:59;29', '29.97DF'), TAP + 34)).toBe('00:00:00;00');
    expect(showing(followLabel('23:59:59:00', '24'), TAP + 86_400_000 + 1000)).toBe('00:00:00:00');
  });

  test('runs backwards before the tap, also past midnight', () => {
    expect(showing(followLabel('10:00:00:00', '25'), TAP - 1)).toBe('09:59:59:24');
    expect(showing(followLabel('10:00:00:00', '25'), TAP - 40)).toBe('09:59:59:24');
    expect(showing(followLabel('10:00:00:00', '25'), TAP - 41)).toBe('09:59:59:23');
    expect(showing(followLabel('00:00:10:00', '25'), TAP - 20_000)).toBe('23:59:50:00');
    expect(showing(followLabel('00:01:00;02', '29.97DF'), TAP - 1)).toBe('00:00:59;29');
  });

  // An hour of the clock is 3600 s; an hour of labels at 23.976 lasts 3603.6 s (24000/1001, SMPTE ST 12-1).
  test('falls 3.6 s behind the clock in an hour at 23.976 and keeps up at 29.97 DF', () => {
    expect(showing(followLabel('10:00:00:00', '23.976'), TAP + 3_603_600)).toBe('11:00:00:00');
    expect(showing(followLabel('10:00:00:00', '23.976'), TAP + 3_600_000)).toBe('10:59:56:09');
    expect(showing(followLabel('10:00:00;00', '29.97DF'), TAP + 3_600_000)).toBe('11:00:00;00');
  });

  test('is exact years away from the tap', () => {
    const years = 20 * 365 * 86_400_000;
    expect(showing(followLabel('10:00:00:00', '25'), TAP + years)).toBe('10:00:00:00');
    expect(showing(followLabel('10:00:00:00', '60'), TAP - years)).toBe('10:00:00:00');
  });

  test(`never leaves the day and moves at most one frame in 16 ms, at every rate (seed ${SEED})`, () => {
    const property = fc.property(
      fc.constantFrom(...RATE_IDS),
      fc.integer({ min: 0, max: 5_183_999 }),
      fc.integer({ min: -2e12, max: 2e12 }),
      (rate, frames, awayMs) => {
        const clock = followAt(frames, rate, TAP);
        const before = timecodeAt(clock, TAP + awayMs);
        const step =
          (timecodeAt(clock, TAP + awayMs + 16) - before + framesPerDay(rate)) % framesPerDay(rate);
        return before >= 0 && before < framesPerDay(rate) && (step === 0 || step === 1);
      },
    );
    expect(fc.check(property, { seed: SEED, numRuns: 3000 }).counterexample).toBeNull();
  });

  test('a time that is no number is a bug and throws', () => {
    expect(() => timecodeAt(followLabel('10:00:00:00', '25'), Number.NaN)).toThrow(RangeError);
    expect(() => timecodeAt(followAt(0, '25', Number.POSITIVE_INFINITY), TAP)).toThrow(RangeError);
  });
});

describe('the next second to tap on', () => {
  test('is a whole one, at least the lead away', () => {
    const clock = followLabel('10:00:00:05', '25');
    const next = nextWholeSecond(clock, TAP, 2000);
    expect(formatTimecode(next.frames, '25')).toBe('10:00:03:00');
    expect(next.atMs).toBe(TAP + 2800);
  });

  test('may be exactly the lead away', () => {
    expect(nextWholeSecond(followLabel('10:00:00:00', '25'), TAP, 2000).atMs).toBe(TAP + 2000);
  });

  test('is two seconds away if nothing else is asked', () => {
    const clock = followLabel('10:00:00:00', '25');
    expect(nextWholeSecond(clock, TAP).atMs).toBe(TAP + 2000);
    expect(nextWholeSecond(clock, TAP + 1).atMs).toBe(TAP + 3000);
  });

  test('crosses midnight, and starts at 02 where drop-frame leaves out 00 and 01', () => {
    const label = (text: string, rate: RateId) =>
      formatTimecode(nextWholeSecond(followLabel(text, rate), TAP, 500).frames, rate);
    expect(label('23:59:59:10', '25')).toBe('00:00:00:00');
    expect(label('10:00:59;10', '29.97DF')).toBe('10:01:00;02');
    expect(label('10:00:59;10', '59.94DF')).toBe('10:01:00;04');
    expect(label('10:09:59;10', '29.97DF')).toBe('10:10:00;00');
  });

  test(`comes up at the stated millisecond and no sooner, within about a second, at every rate (seed ${SEED})`, () => {
    const property = fc.property(
      fc.constantFrom(...RATE_IDS),
      fc.integer({ min: 0, max: 5_183_999 }),
      fc.integer({ min: -1e11, max: 1e11 }),
      fc.integer({ min: 0, max: 10_000 }),
      (rate, frames, awayMs, leadMs) => {
        const clock = followAt(frames, rate, TAP);
        const now = TAP + awayMs;
        const next = nextWholeSecond(clock, now, leadMs);
        const label = labelOfFrame(next.frames, rate);
        expect(label.frames).toBe(droppedAt(rateOf(rate), label.minutes, label.seconds));
        expect(timecodeAt(clock, next.atMs)).toBe(next.frames);
        expect(timecodeAt(clock, next.atMs - 1)).not.toBe(next.frames);
        expect(next.atMs).toBeGreaterThanOrEqual(now + leadMs);
        expect(next.atMs - now - leadMs).toBeLessThanOrEqual(framesToMs(rateOf(rate).base, rate) + 1);
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 2000 });
    expect.assertions(2000 * 5);
  });
});

describe('time of day, before the first tap', () => {
  const zoneBefore = process.env.TZ;
  afterEach(() => {
    if (zoneBefore === undefined) delete process.env.TZ;
    else process.env.TZ = zoneBefore;
  });

  const label = (iso: string, zoneMinutes: number, rate: RateId): string =>
    formatTimecode(timeOfDayClock(Date.parse(iso), zoneMinutes, rate).frames, rate);

  test('turns to the next day at midnight of a half-hour zone', () => {
    expect(label('2026-10-07T18:29:59.959Z', 330, '25')).toBe('23:59:59:23');
    expect(label('2026-10-07T18:29:59.960Z', 330, '25')).toBe('23:59:59:24');
    expect(label('2026-10-07T18:30:00.000Z', 330, '25')).toBe('00:00:00:00');
    expect(label('2026-10-07T00:00:00.000Z', -210, '25')).toBe('20:30:00:00');
    expect(label('2026-10-07T07:30:00.500Z', 345, '25')).toBe('13:15:00:12');
  });

  test('runs on from there like any followed clock, past midnight', () => {
    const before = Date.parse('2026-10-07T18:29:50Z');
    expect(showing(timeOfDayClock(before, 330, '25'), before + 20_000)).toBe('00:00:10:00');
  });

  test('keeps the hour, minute and second of the phone at every rate, in every millisecond of a left-out minute', () => {
    const minute = Date.parse('2026-10-07T10:01:00Z');
    for (const rate of RATE_IDS) {
      for (let ms = 0; ms < 2000; ms++) {
        const shown = labelOfFrame(timeOfDayClock(minute + ms, 0, rate).frames, rate);
        if (shown.minutes !== 1 || shown.seconds !== Math.floor(ms / 1000))
          expect.fail(`${rate} at ${ms} ms`);
      }
    }
    expect(label('2026-10-07T10:01:00Z', 0, '59.94DF')).toBe('10:01:00;04');
  });

  // A phone's own offset, as its Date object reports it, west of Greenwich positive. January offsets: time zone database.
  test.each([
    ['UTC', 0],
    ['Asia/Kolkata', -330],
    ['Asia/Kathmandu', -345],
    ['America/St_Johns', 210],
    ['Australia/Lord_Howe', -660],
    ['Pacific/Kiritimati', -840],
  ])('agrees all year with a phone set to %s', (zone, januaryOffset) => {
    process.env.TZ = zone;
    expect(new Date(Date.UTC(2026, 0, 1)).getTimezoneOffset()).toBe(januaryOffset);
    for (let hour = 0; hour < 365 * 24; hour += 7) {
      const at = new Date(Date.UTC(2026, 0, 1, hour, 11, 12));
      const shown = labelOfFrame(timeOfDayClock(at.getTime(), -at.getTimezoneOffset(), '24').frames, '24');
      if (shown.hours !== at.getHours() || shown.minutes !== at.getMinutes())
        expect.fail(`${at.toISOString()} shows ${JSON.stringify(shown)}`);
    }
  });

  test.each(['Asia/Kolkata', 'America/St_Johns', 'UTC'])(
    'is not moved by the zone of the machine, here %s',
    (zone) => {
      process.env.TZ = zone;
      expect(label('2026-10-07T18:45:00Z', 120, '25')).toBe('20:45:00:00');
      expect(showing(followLabel('23:59:50:00', '25'), TAP + 20_000)).toBe('00:00:10:00');
    },
  );
});
