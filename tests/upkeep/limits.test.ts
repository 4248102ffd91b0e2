import { describe, expect, test } from 'vitest';
import type { Result } from '../../src/shared/result.ts';
import { planCells, swapTimes } from '../../src/upkeep/due/batteries.ts';
import { cardLeft } from '../../src/upkeep/due/card-left.ts';
import { planJams, worstApart } from '../../src/upkeep/due/jams.ts';
import { bytesPerSecond, hoursIn, minutesToFileLimit } from '../../src/upkeep/due/media.ts';
import { firstBadQuantity } from '../../src/upkeep/quantity.ts';
import { linkLoad, streamLoad } from '../../src/upkeep/wiring/audio-network.ts';
import { runtimeHours, wattHours } from '../../src/upkeep/wiring/battery-energy.ts';
import { loadPoint } from '../../src/upkeep/wiring/constant-power.ts';
import { cartRun, fuseLimit } from '../../src/upkeep/wiring/direct-current.ts';
import { networkLead } from '../../src/upkeep/wiring/ethernet-power.ts';
import { copperFactor } from '../../src/upkeep/wiring/network-cables.ts';

type Call = (value: number) => Result<unknown>;
type Row = readonly [what: string, field: string, least: number, most: number, call: Call, isWhole?: boolean];

const HOUR = 3_600_000;
const LAST_DATE_MS = 8.64e15;
const format = { tracks: 8, sampleRate: 48_000, bits: 24 as const };
const stream = { channels: 1, sampleRate: 48_000, samplesPerPacket: 6 };
const span = { freshAtMs: 0, runtimeHours: 5, untilMs: 12 * HOUR };
const shift = { nowMs: 0, takeOpen: false };
const card = { card: 'A', capacityBytes: 64e9, usedBytes: 0, format, recordedMs: 0 };
const cardDay = { nowMs: 100 * HOUR, callAtMs: 99 * HOUR, takeOpen: false };
const lead = { powerClass: 4, cable: 'awg-23' as const, metres: 10 };
const run = { volts: 12, awg: 10, metres: 1, load: { amps: 1 } };
const jams = { nowMs: 0, takeOpen: false, rate: '25' as const };
const jam = { device: 'A', from: 'R', atMs: 0, tolerancePpm: 1 };

/** What each figure may be, ends included. The ranges are ours: beyond them a figure is a slip of the keyboard. */
const ROWS: readonly Row[] = [
  [
    'a stream',
    'channels',
    1,
    512,
    (value) => streamLoad({ ...stream, channels: value, samplesPerPacket: 1, bytesPerSample: 2 }),
    true,
  ],
  ['a stream', 'sampleRate', 8000, 384_000, (value) => streamLoad({ ...stream, sampleRate: value })],
  [
    'a stream',
    'samplesPerPacket',
    1,
    4096,
    (value) => streamLoad({ ...stream, samplesPerPacket: value }),
    true,
  ],
  ['a link', 'linkMbps', 1, 1e6, (value) => linkLoad([stream], value)],
  ['a plan of cells', 'marginFactor', 0.1, 1, (value) => planCells([], { ...shift, marginFactor: value })],
  [
    'a plan of cells',
    'nowMs',
    -LAST_DATE_MS,
    LAST_DATE_MS,
    (value) => planCells([], { ...shift, nowMs: value }),
  ],
  [
    'a plan of cells',
    'mealAtMs',
    -LAST_DATE_MS,
    LAST_DATE_MS,
    (value) => planCells([], { ...shift, mealAtMs: value }),
  ],
  [
    'a plan of cells',
    'wrapAtMs',
    -LAST_DATE_MS,
    LAST_DATE_MS,
    (value) => planCells([], { ...shift, wrapAtMs: value }),
  ],
  ['swaps', 'runtimeHours', 0.05, 1000, (value) => swapTimes({ ...span, runtimeHours: value })],
  ['swaps', 'marginFactor', 0.1, 1, (value) => swapTimes({ ...span, marginFactor: value })],
  ['swaps', 'untilMs', 0, 48 * HOUR, (value) => swapTimes({ ...span, untilMs: value })],
  ['a battery', 'volts', 0.1, 1000, (value) => wattHours(value, 1)],
  ['a battery', 'ampHours', 0.001, 10_000, (value) => wattHours(1, value)],
  ['a run on batteries', 'wattHours', 0.01, 1e6, (value) => runtimeHours({ wattHours: value, watts: 1 })],
  ['a run on batteries', 'watts', 0.001, 100_000, (value) => runtimeHours({ wattHours: 1, watts: value })],
  [
    'a run on batteries',
    'usable',
    0.05,
    1,
    (value) => runtimeHours({ wattHours: 1, watts: 1, usable: value }),
  ],
  [
    'a run on batteries',
    'converterEfficiency',
    0.05,
    1,
    (value) => runtimeHours({ wattHours: 1, watts: 1, converterEfficiency: value }),
  ],
  ['a card', 'capacityBytes', 1, 1e18, (value) => cardLeft({ ...card, capacityBytes: value }, cardDay)],
  ['a card', 'usedBytes', 0, 64e9, (value) => cardLeft({ ...card, usedBytes: value }, cardDay)],
  ['a card', 'callAtMs', 52 * HOUR, 100 * HOUR, (value) => cardLeft(card, { ...cardDay, callAtMs: value })],
  ['a card', 'recordedMs', 0, 48 * HOUR, (value) => cardLeft({ ...card, recordedMs: value }, cardDay)],
  ['a card', 'reserveHours', 0, 48, (value) => cardLeft(card, { ...cardDay, reserveHours: value })],
  ['a load', 'volts', 0.1, 1000, (value) => loadPoint(value, 0, 0.001)],
  ['a load', 'ohms', 0, 10_000, (value) => loadPoint(1000, value, 0.001)],
  ['a load', 'watts', 0.001, 10_000, (value) => loadPoint(1000, 0, value)],
  ['a cart lead', 'volts', 0.1, 60, (value) => cartRun({ ...run, volts: value })],
  ['a cart lead', 'metres', 0.1, 1000, (value) => cartRun({ ...run, metres: value, load: { watts: 0.001 } })],
  ['a cart lead', 'deviceMinVolts', 0, 60, (value) => cartRun({ ...run, deviceMinVolts: value })],
  ['a cart lead', 'amps', 0.001, 200, (value) => cartRun({ ...run, metres: 0.1, load: { amps: value } })],
  ['a fuse', 'connectorAmps', 0.01, 200, (value) => fuseLimit({ awg: 18, connectorAmps: value })],
  ['a fuse', 'deviceAmps', 0.01, 200, (value) => fuseLimit({ awg: 18, deviceAmps: value })],
  ['a network lead', 'metres', 0.1, 1000, (value) => networkLead({ ...lead, metres: value })],
  ['a network lead', 'connectorOhms', 0, 20, (value) => networkLead({ ...lead, connectorOhms: value })],
  ['a network lead', 'deviceWatts', 0.1, 25.5, (value) => networkLead({ ...lead, deviceWatts: value })],
  ['a plan of jams', 'limitFrames', 0.01, 1e6, (value) => planJams([], { ...jams, limitFrames: value })],
  ['a plan of jams', 'ppm', 0, 10_000, (value) => planJams([], { ...jams, referencePpm: value })],
  ['two jams', 'ppm', 0, 10_000, (value) => worstApart(jam, { ...jam, tolerancePpm: value }, jams)],
  ['media', 'tracks', 1, 512, (value) => bytesPerSecond({ ...format, tracks: value }), true],
  ['media', 'sampleRate', 8000, 768_000, (value) => bytesPerSecond({ ...format, sampleRate: value })],
  ['media', 'bits', 16, 32, (value) => bytesPerSecond({ ...format, bits: value as 24 })],
  ['media', 'bytes', 0, 1e18, (value) => hoursIn(value, format)],
  ['media', 'headerBytes', 0, 2 ** 31, (value) => minutesToFileLimit(format, '2 GiB', value)],
  ['media', 'headerBytes', 0, 2 ** 32, (value) => minutesToFileLimit(format, '4 GiB', value)],
  ['copper', 'celsius', -60, 120, copperFactor],
];

/** Answers may be refused for other reasons, such as a packet that is too large; what counts is this figure. */
const refusedFor = (result: Result<unknown>, field: string): object | undefined =>
  !result.ok && 'field' in result.problem && result.problem.field === field ? result.problem : undefined;

describe('the ranges of figures', () => {
  test.each(
    ROWS.map(([what, field, least, most, call, isWhole = false]) => ({
      what,
      field,
      least,
      most,
      call,
      isWhole,
    })),
  )('$what: $field from $least to $most', ({ field, least, most, call, isWhole }) => {
    const little = Math.max(1e-12, Math.abs(most) * 1e-9);
    expect(refusedFor(call(least), field)).toBeUndefined();
    expect(refusedFor(call(most), field)).toBeUndefined();
    const limits = { code: 'quantity-out-of-range', min: least, max: most };
    const below = least - Math.max(1e-12, Math.abs(least) * 1e-9);
    expect(refusedFor(call(below), field)).toMatchObject({ ...limits, value: below });
    expect(refusedFor(call(most + little), field)).toMatchObject(limits);
    expect(refusedFor(call(Number.NaN), field)).toMatchObject({ code: 'quantity-not-finite' });
    if (isWhole) expect(refusedFor(call(least + 0.5), field)).toMatchObject({ code: 'quantity-not-whole' });
    else if (most - least > 1) expect(refusedFor(call(least + 0.5), field)).toBeUndefined();
  });

  test('the first figure that is wrong is told', () => {
    const fine = { field: 'a', value: 1, min: 0, max: 2 };
    expect(firstBadQuantity([fine])).toBeUndefined();
    expect(
      firstBadQuantity([fine, { ...fine, field: 'b', value: 3 }, { ...fine, field: 'c', value: 4 }]),
    ).toEqual({
      code: 'quantity-out-of-range',
      field: 'b',
      value: 3,
      min: 0,
      max: 2,
    });
  });
});

describe('a load at the most a lead can carry', () => {
  test('of constant power is carried at half the volts, and not a watt more', () => {
    expect(loadPoint(20, 5, 20)).toEqual({ ok: true, value: { loadVolts: 10, amps: 2, lossWatts: 20 } });
    expect(loadPoint(20, 5, 20.1)).toEqual({
      ok: false,
      problem: { code: 'load-beyond-lead', watts: 20.1, mostWatts: 20 },
    });
  });

  test('of constant current leaves some volts, or is refused with the most there is', () => {
    const perMetre = (2 * 3.28) / 1000;
    const most = 12 / perMetre / 100;
    const at = (amps: number) => cartRun({ ...run, metres: 100, load: { amps } });
    expect(at(most * 0.999)).toMatchObject({ ok: true });
    const beyond = at(most);
    expect(beyond).toMatchObject({ ok: false, problem: { code: 'current-beyond-lead', amps: most } });
    expect(beyond).toHaveProperty('problem.mostAmps', expect.closeTo(most, 9));
  });

  test('is cautioned of above its rating, below its device and past the aim, and not at them', () => {
    const cautions = (amps: number, more: object = {}) => {
      const result = cartRun({ ...run, awg: 18, metres: 0.1, load: { amps }, ...more });
      return result.ok ? result.value.cautions : [];
    };
    expect(cautions(7)).toEqual([]);
    expect(cautions(7.01)).toEqual(['above-cord-rating']);
    const { loadVolts } = (
      cartRun({ ...run, awg: 18, metres: 0.1, load: { amps: 5 } }) as never as {
        value: { loadVolts: number };
      }
    ).value;
    expect(cautions(5, { deviceMinVolts: loadVolts })).toEqual([]);
    expect(cautions(5, { deviceMinVolts: loadVolts + 1e-9 })).toEqual(['below-device-minimum']);
  });
});

describe('a packet of sound (RFC 3550, 768, 791; IEEE 802.3)', () => {
  test('holds 1460 bytes beside its headers', () => {
    const of = (channels: number, samplesPerPacket: number, bytesPerSample: 2 | 3) =>
      streamLoad({ channels, sampleRate: 48_000, samplesPerPacket, bytesPerSample });
    expect(of(1, 730, 2)).toMatchObject({ ok: true, value: { payloadBytes: 1460 } });
    expect(of(1, 731, 2)).toEqual({
      ok: false,
      problem: { code: 'packet-too-large', payloadBytes: 1462, mostChannels: 0 },
    });
    expect(of(11, 48, 3)).toEqual({
      ok: false,
      problem: { code: 'packet-too-large', payloadBytes: 1584, mostChannels: 10 },
    });
    expect(of(10, 48, 3)).toMatchObject({ ok: true });
  });
});
