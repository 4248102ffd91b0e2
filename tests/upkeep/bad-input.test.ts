import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Result } from '../../src/shared/result.ts';
import { planCells, swapTimes } from '../../src/upkeep/due/batteries.ts';
import { cardLeft } from '../../src/upkeep/due/card-left.ts';
import { planJams, worstApart } from '../../src/upkeep/due/jams.ts';
import { bytesPerSecond, hoursIn, minutesToFileLimit } from '../../src/upkeep/due/media.ts';
import { dateUserBits } from '../../src/upkeep/due/user-bits.ts';
import { linkLoad, streamLoad } from '../../src/upkeep/wiring/audio-network.ts';
import { runtimeHours, wattHours } from '../../src/upkeep/wiring/battery-energy.ts';
import { loadPoint } from '../../src/upkeep/wiring/constant-power.ts';
import { cartRun, fuseLimit } from '../../src/upkeep/wiring/direct-current.ts';
import { networkLead } from '../../src/upkeep/wiring/ethernet-power.ts';
import { conductorOhms, copperFactor } from '../../src/upkeep/wiring/network-cables.ts';
import { snakePins } from '../../src/upkeep/wiring/snake-pins.ts';
import { numbersIn } from './unwrap.ts';

type Six = readonly [number, number, number, number, number, number];

const format = (tracks: number, sampleRate: number) => ({ tracks, sampleRate, bits: 24 as const });
const jam = (device: string, atMs: number, tolerancePpm: number) => ({
  device,
  from: 'R',
  atMs,
  tolerancePpm,
});

const HOUR = 3_600_000;

/** Six numbers each function answers to; shaken below. */
const USUAL: Readonly<Record<string, Six>> = {
  streamLoad: [8, 48_000, 48, 0, 0, 0],
  linkLoad: [8, 48_000, 48, 100, 0, 0],
  planCells: [0, 5, HOUR, 0.8, 6 * HOUR, 12 * HOUR],
  swapTimes: [0, 5, 12 * HOUR, 0.8, 3 * HOUR, 6 * HOUR],
  runtimeHours: [98, 35, 0.9, 0.9, 0, 0],
  wattHours: [14.4, 6.8, 0, 0, 0, 0],
  cardLeft: [64e9, 1, 2 * HOUR, 6 * HOUR, 0, 12 * HOUR],
  loadPoint: [50, 12.5, 25.5, 0, 0, 0],
  cartRunWatts: [12, 5, 60, 11, 0, 0],
  cartRunAmps: [12, 3, 5, 18, 0, 0],
  fuseLimit: [18, 10, 5, 0, 0, 0],
  networkLead: [4, 76, 40, 0.5, 20, 0],
  networkLeadClass8: [60, 0.5, 60, 0, 0, 0],
  planJams: [0, 5, HOUR, 1, 4 * HOUR, 1],
  worstApart: [0, 5, HOUR, 1, 4 * HOUR, 1],
  bytesPerSecond: [8, 48_000, 0, 0, 0, 0],
  hoursIn: [64e9, 8, 48_000, 0, 0, 0],
  minutesToFileLimit: [8, 48_000, 1000, 0, 0, 0],
  copperFactor: [40, 0, 0, 0, 0, 0],
  conductorOhms: [76, 40, 0, 0, 0, 0],
  snakePins: [3, 0, 0, 0, 0, 0],
  dateUserBits: [2026, 10, 7, 0, 0, 0],
};

/** Every public function that takes numbers, fed with any six. */
const FED: Readonly<Record<string, (numbers: Six) => Result<unknown>>> = {
  streamLoad: ([a, b, c]) => streamLoad({ channels: a, sampleRate: b, samplesPerPacket: c }),
  linkLoad: ([a, b, c, d]) => linkLoad([{ channels: a, sampleRate: b, samplesPerPacket: c }], d),
  planCells: ([a, b, c, d, e, f]) =>
    planCells([{ device: 'A', freshAtMs: a, runtimeHours: b, basis: 'planned' }], {
      nowMs: c,
      takeOpen: false,
      marginFactor: d,
      mealAtMs: e,
      wrapAtMs: f,
    }),
  swapTimes: ([a, b, c, d, e, f]) =>
    swapTimes({ freshAtMs: a, runtimeHours: b, untilMs: c, marginFactor: d, pausesMs: [e, f] }),
  runtimeHours: ([a, b, c, d]) => runtimeHours({ wattHours: a, watts: b, usable: c, converterEfficiency: d }),
  wattHours: ([a, b]) => wattHours(a, b),
  cardLeft: ([a, b, c, d, e, f]) =>
    cardLeft(
      { card: 'A', capacityBytes: a, usedBytes: b, format: format(8, 48_000), recordedMs: c },
      { nowMs: d, callAtMs: e, takeOpen: false, wrapAtMs: f, reserveHours: b },
    ),
  loadPoint: ([a, b, c]) => loadPoint(a, b, c),
  cartRunWatts: ([a, b, c, d]) =>
    cartRun({ volts: a, awg: 18, metres: b, load: { watts: c }, deviceMinVolts: d }),
  cartRunAmps: ([a, b, c, d]) => cartRun({ volts: a, awg: d, metres: b, load: { amps: c } }),
  fuseLimit: ([a, b, c]) => fuseLimit({ awg: a, connectorAmps: b, deviceAmps: c }),
  networkLead: ([a, b, c, d, e]) =>
    networkLead({
      powerClass: a,
      cable: 'awg-26',
      metres: b,
      celsius: c,
      connectorOhms: d,
      deviceWatts: e,
    }),
  networkLeadClass8: ([a, b, c]) =>
    networkLead({ powerClass: 8, cable: 'iec-stranded-limit', metres: a, connectorOhms: b, deviceWatts: c }),
  planJams: ([a, b, c, d, e, f]) =>
    planJams([jam('A', a, b), { ...jam('B', c, d), from: 'A' }], {
      nowMs: e,
      takeOpen: true,
      rate: '25',
      limitFrames: f,
      referencePpm: b,
    }),
  worstApart: ([a, b, c, d, e, f]) =>
    worstApart(jam('A', a, b), jam('B', c, d), { nowMs: e, rate: '25', referencePpm: f }),
  bytesPerSecond: ([a, b]) => bytesPerSecond(format(a, b)),
  hoursIn: ([a, b, c]) => hoursIn(a, format(b, c)),
  minutesToFileLimit: ([a, b, c]) => minutesToFileLimit(format(a, b), '2 GiB', c),
  copperFactor: ([a]) => copperFactor(a),
  conductorOhms: ([a, b]) => conductorOhms('awg-24', a, b),
  snakePins: ([a]) => snakePins(a),
  dateUserBits: ([a, b, c]) => dateUserBits({ year: a, month: b, day: c }),
};

const wild = fc.oneof(
  fc.constantFrom(0, 1, 2, 0.5, 48, 8000, 3_600_000, 1e12, -1, -0, 1e-300, 1e300, 5e-324),
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
);

/** A usual number, now and then shaken a little or replaced by anything at all. */
const shaken = (usual: number) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constant(usual) },
    { weight: 2, arbitrary: fc.double({ min: 0.01, max: 3, noNaN: true }).map((factor) => usual * factor) },
    { weight: 2, arbitrary: wild },
  );

describe('no function', () => {
  test.each(Object.keys(FED))('called %s lets out a number that is none, or throws (seed 40490)', (name) => {
    const [a, b, c, d, e, f] = USUAL[name]!;
    const six = fc.tuple(shaken(a), shaken(b), shaken(c), shaken(d), shaken(e), shaken(f));
    let answered = 0;
    let refused = 0;
    fc.assert(
      fc.property(six, (numbers) => {
        const result = FED[name]!(numbers);
        if (result.ok) answered += 1;
        else refused += 1;
        expect(numbersIn(result).filter((found) => !Number.isFinite(found))).toEqual([]);
      }),
      { seed: 40490, numRuns: 800 },
    );
    // A check that refused everything, or nothing, would have looked at nothing.
    expect([answered, refused].every((count) => count > 40)).toBe(true);
  });
});
