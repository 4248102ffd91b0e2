import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RateId } from '../../src/time/rate.ts';
import { labelsBehindClock } from '../../src/upkeep/due/drift.ts';
import { type Jam, planJams, worstApart } from '../../src/upkeep/due/jams.ts';
import { codeOf, printed, unwrap } from './unwrap.ts';

const HOUR = 3_600_000;
const at = (clock: string): number => Date.parse(`2031-05-06T${clock}:00Z`);

/** A device jammed at 0, as it is now after so many ms. */
const jammed = (ppm: number, elapsedMs: number, rate: RateId, referencePpm = 0) =>
  planJams([{ device: 'slate', from: 'recorder', atMs: 0, tolerancePpm: ppm }], {
    nowMs: elapsedMs,
    takeOpen: false,
    rate,
    referencePpm,
  });
const driftFrames = (ppm: number, elapsedMs: number, rate: RateId): number =>
  unwrap(jammed(ppm, elapsedMs, rate)).due[0]!.driftFrames;
const hoursToDrift = (ppm: number, rate: RateId): number =>
  unwrap(jammed(ppm, 0, rate)).due[0]!.dueAtMs! / HOUR;

describe('drift', () => {
  // Frames an hour = ppm × 10⁻⁶ × 3600 × frames a second, at the exact rates of SMPTE ST 12-1.
  const RATES_OF_TABLE: readonly RateId[] = ['23.976', '24', '25', '29.97', '50'];
  test.each([
    [0.2, ['0.0173', '0.0173', '0.0180', '0.0216', '0.0360']],
    [1, ['0.0863', '0.0864', '0.0900', '0.1079', '0.1800']],
    [5, ['0.4316', '0.4320', '0.4500', '0.5395', '0.9000']],
    [10, ['0.8631', '0.8640', '0.9000', '1.0789', '1.8000']],
    [50, ['4.3157', '4.3200', '4.5000', '5.3946', '9.0000']],
  ])('of %s ppm over an hour is as the table prints it at every rate', (ppm, row) => {
    expect(RATES_OF_TABLE.map((rate) => driftFrames(ppm, HOUR, rate).toFixed(4))).toEqual(row);
  });

  test('of 0.2 ppm takes 55.56 h to one frame at 25, of 1 ppm 11.11 h', () => {
    expect(hoursToDrift(0.2, '25').toFixed(2)).toBe('55.56');
    expect(hoursToDrift(1, '25').toFixed(2)).toBe('11.11');
  });

  test('of 1 ppm is 3.6 ms an hour and 43.2 ms in 12 h', () => {
    expect((driftFrames(1, HOUR, '25') * 40).toFixed(1)).toBe('3.6');
    expect((driftFrames(1, 12 * HOUR, '25') * 40).toFixed(1)).toBe('43.2');
  });

  test('of two clocks adds', () => {
    expect(unwrap(jammed(5, HOUR, '25', 1)).due[0]!.driftFrames).toBeCloseTo(driftFrames(6, HOUR, '25'), 12);
  });

  test('reaches exactly one frame after the hours it says (seed 20310506)', () => {
    const ppm = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(ppm, fc.constantFrom(...RATES_OF_TABLE), (value, rate) => {
        // To the whole millisecond in which it comes due.
        const ms = Math.round(hoursToDrift(value, rate) * HOUR);
        const aMs = driftFrames(value, 1, rate);
        expect(Math.abs(driftFrames(value, ms, rate) - 1)).toBeLessThanOrEqual(aMs);
      }),
      { seed: 20310506 },
    );
  });

  test('refuses a clock that never drifts, and times that are none', () => {
    expect(unwrap(jammed(0, HOUR, '25')).due[0]).not.toHaveProperty('dueAtMs');
    const unknown = (ppm: number, ms: number) => unwrap(jammed(ppm, ms, '25')).unknown[0]?.problem.code;
    expect(unknown(-1, HOUR)).toBe('quantity-out-of-range');
    expect(unknown(1, -HOUR)).toBe('jam-after-now');
    expect(codeOf(jammed(1, Number.POSITIVE_INFINITY, '25'))).toBe('quantity-not-finite');
  });
});

describe('labels against the clock', () => {
  // Counting of SMPTE ST 12-1; 30 DF is common practice, no source.
  test.each<[RateId, string, string]>([
    ['23.976', '3600.0', '86400.0'],
    ['29.97', '3600.0', '86400.0'],
    ['29.97DF', '-3.6', '-86.4'],
    ['30DF', '-3600.0', '-86400.0'],
    ['24', '0.0', '0.0'],
    ['25', '0.0', '0.0'],
  ])('at %s run %s ms behind an hour and %s ms a day', (rate, hour, day) => {
    const { hourMs, dayMs } = labelsBehindClock(rate);
    expect([hourMs.toFixed(1), dayMs.toFixed(1)]).toEqual([hour, day]);
  });

  test('at 29.97 DF part by 0.1079 frame an hour and 2.589 a day', () => {
    const { hourMs, dayMs } = labelsBehindClock('29.97DF');
    expect([(hourMs * 30) / 1001, (dayMs * 30) / 1001].map((frames) => frames.toFixed(3))).toEqual([
      '-0.108',
      '-2.589',
    ]);
  });
});

describe('the plan of jams', () => {
  const jam = (device: string, from: string, clock: string, tolerancePpm: number): Jam => ({
    device,
    from,
    atMs: at(clock),
    tolerancePpm,
  });
  const check = { nowMs: at('11:00'), takeOpen: false, rate: '25' as const };

  test('gives drift since the last jam and when the next is due, soonest first', () => {
    const jams = [
      jam('slate', 'recorder', '07:00', 5),
      jam('camera A', 'recorder', '06:00', 50),
      jam('camera A', 'recorder', '10:00', 50),
    ];
    const { due } = unwrap(planJams(jams, check));
    expect(due.map(({ device, driftFrames: frames }) => [device, frames.toFixed(3)])).toEqual([
      ['slate', '1.800'],
      ['camera A', '4.500'],
    ]);
    // One frame at 25 takes 2.222 h at 5 ppm and 0.222 h at 50 ppm.
    expect(due.map(({ dueAtMs }) => new Date(dueAtMs!).toISOString().slice(11, 19))).toEqual([
      '09:13:20',
      '10:13:20',
    ]);
  });

  test('adds the tolerance of the clock it was jammed from', () => {
    const { due } = unwrap(planJams([jam('slate', 'recorder', '10:00', 5)], { ...check, referencePpm: 1 }));
    expect(due[0]!.driftFrames.toFixed(2)).toBe('0.54');
  });

  test('hands down what the source had drifted when it passed its timecode on', () => {
    const jams = [jam('box', 'recorder', '07:00', 5), jam('camera B', 'box', '10:00', 1)];
    const cameraB = unwrap(planJams(jams, check)).due.find(({ device }) => device === 'camera B')!;
    // The box: 3 h at 0.45 frame an hour; then an hour at 0.09.
    expect(cameraB.driftFrames.toFixed(2)).toBe('1.44');
    expect(cameraB.dueAtMs).toBe(at('10:00'));
  });

  test('is not upset by devices jammed from each other', () => {
    const jams = [jam('A', 'B', '08:00', 1), jam('B', 'A', '08:00', 1), jam('A', 'B', '09:00', 1)];
    expect(
      unwrap(planJams(jams, check))
        .due.map(({ device }) => device)
        .sort(),
    ).toEqual(['A', 'B']);
  });

  test('puts a device that cannot drift last, without a moment', () => {
    const { due } = unwrap(
      planJams([jam('A', 'recorder', '08:00', 0), jam('B', 'recorder', '08:00', 1)], check),
    );
    expect(due.map(({ device }) => device)).toEqual(['B', 'A']);
    expect(due[1]).not.toHaveProperty('dueAtMs');
  });

  test('never asks for a re-jam during an open take', () => {
    const jams = [jam('slate', 'recorder', '07:00', 50)];
    expect(unwrap(planJams(jams, { ...check, takeOpen: true })).due[0]!.action).toBe('at-cut');
    expect(unwrap(planJams(jams, check)).due[0]!.action).toBe('now');
  });

  test('sets aside jams that cannot be, and keeps the rest', () => {
    const jams = [
      jam('A', 'recorder', '12:00', 1),
      jam('B', 'B', '08:00', 1),
      jam('C', 'recorder', '08:00', Number.NaN),
      jam('D', 'recorder', '08:00', 1),
    ];
    const { due, unknown } = unwrap(planJams(jams, check));
    expect(due.map(({ device }) => device)).toEqual(['D']);
    expect(unknown.map(({ problem }) => problem.code)).toEqual([
      'jam-after-now',
      'jam-from-itself',
      'quantity-not-finite',
    ]);
  });

  test('says how far two devices may be apart, the wander of their source between the jams included', () => {
    const [one, other] = [jam('A', 'recorder', '10:00', 5), jam('B', 'recorder', '10:00', 10)];
    expect(printed(worstApart(one, other, check), 2)).toBe('1.35');
    const earlier = { ...one, atMs: at('09:00') };
    // 5 ppm for 2 h, 10 ppm for 1 h, and the source's 1 ppm for the hour between: 21 ppm-hours at 0.09.
    expect(printed(worstApart(earlier, other, { ...check, referencePpm: 1 }), 2)).toBe('1.89');
    expect(codeOf(worstApart(one, { ...other, from: 'slate' }, check))).toBe('different-sources');
  });
});
