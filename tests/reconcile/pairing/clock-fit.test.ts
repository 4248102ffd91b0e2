import { describe, expect, test } from 'vitest';
import { pulldownBetween } from '../../../src/reconcile/differences/pulldown.ts';
import { commonest } from '../../../src/reconcile/log-and-card/commonest.ts';
import { dayAxis } from '../../../src/reconcile/log-and-card/label-time.ts';
import {
  clockPoints,
  firstFrom,
  fitClocks,
  followingLine,
  isSteady,
} from '../../../src/reconcile/pairing/clock-fit.ts';
import { medianOf, robustLine } from '../../../src/reconcile/pairing/robust-line.ts';
import { loggedWith, pairWith, recordedWith } from '../plain-pair.ts';

const HOUR = 3_600_000;
const DAY_MS = 24 * HOUR;
const MINUTE = 60_000;
const AXIS = dayAxis([8 * HOUR, 20 * HOUR], DAY_MS);

/** Takes at these times, and recordings later by so much, of slates that say which is which or of none. */
const logAndCard = (starts: readonly number[], laterMs: (at: number) => number, isSlated = true) => ({
  takes: starts.map((startMs, at) => loggedWith({ startMs, scenes: isSlated ? [`S${at}`] : ['S'] })),
  recordings: starts.map((startMs, at) =>
    recordedWith({ startMs: startMs + laterMs(at), scene: isSlated ? `S${at}` : undefined, number: 1 }),
  ),
});
const laterBy = (starts: readonly number[], laterMs: (at: number) => number, isSlated = true): number[] => {
  const { takes, recordings } = logAndCard(starts, laterMs, isSlated);
  const clock = fitClocks(takes, recordings, AXIS);
  return starts.map((start) => Math.round(clock(start) - start));
};
/** Uneven, so that no two gaps are alike. */
const STARTS = [0, 7, 16, 28, 45, 71, 99, 140, 182, 240].map((minutes) => 9 * HOUR + minutes * MINUTE);

describe('how log and recorder tell the time', () => {
  test('is one where they agree, and where one of them says nothing', () => {
    expect(laterBy(STARTS, () => 0)).toEqual(STARTS.map(() => 0));
    const { takes, recordings } = logAndCard(STARTS, () => 5 * MINUTE);
    expect(fitClocks(takes, [], AXIS)(1234)).toBe(1234);
    expect(fitClocks([], recordings, AXIS)(1234)).toBe(1234);
    expect(fitClocks([loggedWith()], recordings, AXIS)(1234)).toBe(1234);
  });

  test('is apart by what pairs of one slate show', () => {
    expect(laterBy(STARTS, () => 5 * MINUTE)).toEqual(STARTS.map(() => 5 * MINUTE));
    // Some are wrong, and the middle one counts.
    expect(laterBy(STARTS, (at) => (at < 3 ? 40 * MINUTE : 5 * MINUTE))[9]).toBe(5 * MINUTE);
  });

  test('is apart by what most starts have in common where slates show nothing', () => {
    expect(laterBy(STARTS, () => -7 * MINUTE, false)).toEqual(STARTS.map(() => -7 * MINUTE));
  });

  test('drifts where that explains more starts', () => {
    // A second a minute is far more than two seconds over four hours.
    const later = (at: number): number => 1000 + (STARTS[at]! - STARTS[0]!) / 60;
    expect(laterBy(STARTS, later)).toEqual(STARTS.map((_, at) => Math.round(later(at))));
  });

  test('is the first guess that explains the most: two seconds apart is explained, a little more is not', () => {
    expect(laterBy(STARTS, () => 2000)).toEqual(STARTS.map(() => 0));
    expect(laterBy(STARTS, () => -2000)).toEqual(STARTS.map(() => 0));
    expect(laterBy(STARTS, () => 2001)).toEqual(STARTS.map(() => 2001));
    expect(laterBy(STARTS, () => -2001)).toEqual(STARTS.map(() => -2001));
  });

  test('counts from the press of the button, and a slate that comes twice on either side says nothing', () => {
    const { takes, recordings } = logAndCard(STARTS, () => 5 * MINUTE);
    const rolled = recordings.map((one) => ({ ...one, startMs: one.startMs! - 6000 }));
    expect(fitClocks(takes, rolled, AXIS)(0)).toBe(5 * MINUTE);
    const [first, ...rest] = recordings;
    const doubled = [first!, { ...first!, startMs: 0, pressMs: 0 }, ...rest.slice(0, 1)];
    expect(fitClocks(takes.slice(0, 2), doubled, AXIS)(0)).toBe(5 * MINUTE);
  });
});

describe('a line or a pulldown', () => {
  test('is steady where its slope is more than three times its error', () => {
    const line = { middle: { x: 0, y: 0 }, spread: 0 };
    expect(isSteady({ ...line, slope: 3.1, slopeError: 1 })).toBe(true);
    expect(isSteady({ ...line, slope: -3.1, slopeError: 1 })).toBe(true);
    expect(isSteady({ ...line, slope: 3, slopeError: 1 })).toBe(false);
    expect(isSteady({ ...line, slope: 0, slopeError: 0 })).toBe(false);
  });

  test('is followed from its middle', () => {
    const line = { slope: 0.5, slopeError: 0, middle: { x: AXIS.at(10 * HOUR), y: 70 }, spread: 0 };
    expect(followingLine(line, AXIS)(10 * HOUR)).toBe(10 * HOUR + 70);
    expect(followingLine(line, AXIS)(10 * HOUR + 8)).toBe(10 * HOUR + 8 + 74);
  });

  test('goes through the times of the log and how much later the button was pressed, the short way', () => {
    const pairs = [
      pairWith({ startMs: 9 * HOUR }, { startMs: 9 * HOUR, pressMs: 9 * HOUR + 500 }),
      pairWith({ startMs: DAY_MS - 1000 }, { startMs: 1000 }),
      pairWith({}, { startMs: 1000 }),
      pairWith({ startMs: 1000 }, {}),
    ];
    expect(clockPoints(pairs, AXIS).map(({ y }) => y)).toEqual([500, 2000]);
  });

  test('has an error as of least squares, its spread read off the median (0.6745 of a normal deviation)', () => {
    const wobbly = [0, 1, 2, 3, 4].map((x) => ({ x, y: 2 * x + (x % 2) }));
    const line = robustLine(wobbly)!;
    expect(line).toMatchObject({ slope: 2, middle: { x: 2, y: 4 }, spread: 0 });
    const apart = [-3, -1, 1, 3].map((x) => ({ x, y: x % 3 === 0 ? 1 : -1 }));
    const flat = robustLine(apart)!;
    expect(flat).toMatchObject({ slope: 0, middle: { x: 0, y: 0 }, spread: 1 });
    expect(flat.slopeError).toBeCloseTo(1.25 / 0.6745 / Math.sqrt(20), 12);
  });

  test('of more than 400 points goes through 400 of them, evenly', () => {
    const every = (count: number) =>
      robustLine(Array.from({ length: count }, (_, x) => ({ x, y: x % 2 === 0 ? 3 * x : 1e6 + 7 * x })))!;
    expect(every(800).slope).toBe(3);
    expect(every(800).middle.x).toBe(medianOf(Array.from({ length: 400 }, (_, at) => 2 * at)));
    expect(every(400).slope).not.toBe(3);
  });

  const long = (ratio: number, lengthMs = 180_000) => pairWith({ lengthMs }, { lengthMs: lengthMs * ratio });

  test.each([
    ['three takes of three minutes', [long(1.001), long(1.001), long(1.001)], '1001/1000'],
    ['shorter the other way', [long(1 / 1.001), long(1 / 1.001), long(1 / 1.001)], '1000/1001'],
    ['two of them', [long(1.001), long(1.001)], null],
    ['one of them a little shorter than that', [long(1.001), long(1.001), long(1.001, 179_999)], null],
    ['too much', [long(1.00111), long(1.00111), long(1.00111)], null],
    ['too little', [long(1.00089), long(1.00089), long(1.00089)], null],
    ['nearly as much', [long(1.00109), long(1.00109), long(1.00109)], '1001/1000'],
    ['no agreement', [long(1.0011), long(1.001), long(1), long(1.0008), long(1.0013)], null],
    ['nothing at all', [], null],
  ])('of 1001/1000 is seen in the lengths of %s', (_, pairs, ratio) => {
    expect(pulldownBetween(pairs, AXIS)?.ratio ?? null).toBe(ratio);
  });

  test('of 1001/1000 says by what it is seen, of how many, and how much it is', () => {
    const found = pulldownBetween([long(1.001), long(1.001), long(1.001), long(1.5, 1000)], AXIS);
    expect(found).toMatchObject({ by: 'lengths', pairs: 3 });
    expect(found!.ppm).toBeCloseTo(1000, 6);
    const starts = [9, 10, 12].map((hour) =>
      pairWith({ startMs: hour * HOUR }, { startMs: hour * HOUR - (hour - 9) * 3600 }),
    );
    expect(pulldownBetween(starts, AXIS)).toMatchObject({ by: 'starts', ratio: '1000/1001', pairs: 3 });
    expect(pulldownBetween(starts.slice(0, 2), AXIS)).toBeNull();
  });
});

test('the first place from a value on, in sorted numbers', () => {
  const sorted = Float64Array.of(1, 3, 3, 7);
  expect([0, 1, 2, 3, 4, 7, 8].map((value) => firstFrom(sorted, value))).toEqual([0, 0, 1, 1, 3, 3, 4]);
  expect(firstFrom(new Float64Array(0), 5)).toBe(0);
});

test('what most say counts, of as many the first, and those who say nothing do not', () => {
  expect(commonest(['a', 'b', undefined, 'b', undefined, undefined])).toBe('b');
  expect(commonest(['a', 'b'])).toBe('a');
  expect(commonest([undefined])).toBeUndefined();
  expect(commonest([])).toBeUndefined();
});
