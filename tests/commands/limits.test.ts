import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../src/commands/command.ts';
import { noteSent } from '../../src/commands/day/send-report.ts';
import { addNote, changeRoll } from '../../src/commands/line/log-takes.ts';
import { weighMoves } from '../../src/commands/line/plan-ahead.ts';
import { addTracks } from '../../src/commands/rig/grow-rig.ts';
import { addReceiver, addSelectors, addTransmitters, nextOrder } from '../../src/commands/rig/lay-rig.ts';
import { idAfter, nameProblem } from '../../src/commands/rig/part-names.ts';
import { outOfBounds } from '../../src/commands/upkeep/bounds.ts';
import { describeRun, putOnSnake } from '../../src/commands/upkeep/describe-runs.ts';
import {
  addDevice,
  describeCard,
  describeDevices,
  freshCells,
  jamDevices,
} from '../../src/commands/upkeep/keep-up.ts';
import {
  describeBand,
  describeCarrier,
  setFrequencies,
  setGuards,
} from '../../src/commands/upkeep/plan-radio.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { SMALL_RIG } from '../day/small-rig.ts';
import { problemOf } from './rig-day.ts';

const NOW = { atMs: MORNING, zone: 120 };
const phone = speaker();
phone.say(...SMALL_RIG);
const takeId = phone.id(take('24', 1, 1));
const day = phone.day();

const newId = (): string => 'new';
const receiver = (...channels: number[]) =>
  addReceiver(
    day,
    {
      name: 'far',
      place: 'bag',
      modules: channels.map((count, at) => ({ name: `m${at}`, channels: count, outputs: 'line' as never })),
    },
    'far',
  );
const text = (length: number): string => 'x'.repeat(length);
const range = { use: 'tunable', fromKhz: 470_000, toKhz: 480_000 } as const;

describe('what may be typed is held at both ends', () => {
  // Our own ranges: beyond them a figure is a slip of the keyboard.
  test.each<[string, number, number, (value: number) => CommandResult, isWhole?: boolean]>([
    ['metres', 0.1, 1000, (metres) => describeRun(day, 'r', { type: 'dc', metres })],
    ['watts', 0.001, 10_000, (watts) => describeRun(day, 'r', { type: 'dc', watts })],
    ['powerClass', 0, 8, (powerClass) => describeRun(day, 'r', { type: 'dc', powerClass }), true],
    ['celsius', -60, 120, (celsius) => describeRun(day, 'r', { type: 'dc', celsius })],
    ['connectorOhms', 0, 20, (connectorOhms) => describeRun(day, 'r', { type: 'dc', connectorOhms })],
    ['channels', 0, 512, (channels) => describeRun(day, 'r', { type: 'dc', channels }), true],
    [
      'channelsAStream',
      1,
      512,
      (channelsAStream) => describeRun(day, 'r', { type: 'dc', channelsAStream }),
      true,
    ],
    [
      'samplesAPacket',
      1,
      4096,
      (samplesAPacket) => describeRun(day, 'r', { type: 'dc', samplesAPacket }),
      true,
    ],
    ['linkMbps', 1, 1_000_000, (linkMbps) => describeRun(day, 'r', { type: 'dc', linkMbps }), true],
    ['volts', 0.1, 60, (volts) => describeRun(day, 'r', { type: 'dc', volts })],
    ['awg', 0, 40, (awg) => describeRun(day, 'r', { type: 'dc', awg }), true],
    ['deviceMinVolts', 0, 60, (deviceMinVolts) => describeRun(day, 'r', { type: 'dc', deviceMinVolts })],
    [
      'batteryWattHours',
      0.01,
      1_000_000,
      (batteryWattHours) => describeRun(day, 'r', { type: 'dc', batteryWattHours }),
    ],
    ['runtimeHours', 0.05, 1000, (runtimeHours) => describeDevices(day, ['A1'], { runtimeHours })],
    ['ppm', 0, 10_000, (ppm) => addDevice('box', { name: 'Box', ppm })],
    ['bytes', 1, 1e15, (bytes) => describeCard(day, 'c', { bytes }), true],
    ['usedBytes', 0, 1e15, (usedBytes) => describeCard(day, 'c', { bytes: 1e15, usedBytes }), true],
    ['tracks', 1, 512, (tracks) => describeCard(day, 'c', { bytes: 1, tracks }), true],
    ['copies', 0, 20, (copies) => describeCard(day, 'c', { bytes: 1, copies }), true],
    ['minutesAgo', 0, 2880, (minutesAgo) => freshCells(day, ['A1'], NOW, { minutesAgo })],
    ['minutesAgo', 0, 2880, (minutesAgo) => jamDevices(day, ['A1'], NOW, 'recorder', { minutesAgo })],
  ])('%s from %d to %d', (field, min, max, command, isWhole = false) => {
    expect([command(min).ok, command(max).ok]).toEqual([true, true]);
    for (const value of [min - 0.0001, max + (max > 1e12 ? 1 : 0.0001)])
      expect(problemOf(command(value))).toEqual({ code: 'quantity-out-of-range', field, value, min, max });
    expect(problemOf(command(Number.NaN))).toEqual({ code: 'quantity-not-finite', field });
    const between = min + 0.5;
    expect(problemOf(command(between))).toEqual(
      isWhole ? { code: 'quantity-not-whole', field, value: between } : null,
    );
  });

  test('what is not typed, or taken back, is not checked', () => {
    const bound = { field: 'volts', min: 1, max: 2 };
    expect(
      outOfBounds([
        { ...bound, value: null },
        { ...bound, value: undefined },
      ]),
    ).toBeUndefined();
    expect(
      outOfBounds([
        { ...bound, value: null },
        { ...bound, value: 3 },
      ]),
    ).toMatchObject({ ok: false });
  });

  test.each<[string, number, number, (count: number) => CommandResult, string]>([
    ['tracks', 1, 64, (count) => addTracks(day, count, newId), 'how-many'],
    ['packs', 1, 64, (count) => addTransmitters(day, 'B', count, newId), 'how-many'],
    ['channels of a receiver', 1, 64, (count) => receiver(count), 'receiver-channels'],
    ['channels of two modules', 0, 60, (count) => receiver(count, 4), 'receiver-channels'],
    ['costs', 1, 99, (retune) => weighMoves({ retune }), 'weight-unusable'],
    ['a guard', 0, 10_000, (carrierKhz) => setGuards({ carrierKhz }), 'guard-unusable'],
    [
      'a frequency',
      1000,
      100_000_000,
      (khz) => setFrequencies(day, [{ transmitter: 'A1', khz }]),
      'frequency-too-',
    ],
    [
      'a carrier',
      1000,
      100_000_000,
      (khz) => describeCarrier(day, 'c', { name: 'C', khz }),
      'frequency-too-',
    ],
    [
      'its distance',
      0,
      10_000,
      (spacingKhz) => describeBand(day, 'b', { ...range, spacingKhz }),
      'guard-unusable',
    ],
    [
      'the end of a stretch',
      470_000,
      2_470_000,
      (toKhz) => describeBand(day, 'b', { ...range, toKhz }),
      'range-',
    ],
    [
      'a name of a part',
      1,
      60,
      (length) => nameProblem(day, { type: 'send', name: text(length) }) ?? { ok: true, value: [] },
      'name-',
    ],
    ['a name of a device', 1, 200, (length) => addDevice('d', { name: text(length) }), 'name-'],
    [
      'a name of a carrier',
      1,
      200,
      (length) => describeCarrier(day, 'c', { name: text(length), khz: 5000 }),
      'name-',
    ],
    ['the letters of packs', 1, 12, (length) => addTransmitters(day, text(length), 1, newId), 'name-'],
    ['a position', 1, 60, (length) => addSelectors(day, ['in1'], ['a', text(length)]), 'name-'],
    ['a note', 1, 4000, (length) => addNote(day, takeId, text(length)), 'note-'],
    ['a roll', 1, 200, (length) => changeRoll(text(length)), 'roll-name'],
  ])('%s from %d to %d', (_, least, most, command, code) => {
    expect([command(least).ok, command(most).ok]).toEqual([true, true]);
    for (const value of [least - 1, most + 1].filter((one) => one >= 0))
      expect(problemOf(command(value))?.code).toContain(code);
  });

  test('half a pack, half a channel and a raster of nothing are refused', () => {
    expect(problemOf(addTransmitters(day, 'B', 1.5, newId))).toMatchObject({ least: 1, most: 64 });
    expect(problemOf(addTracks(day, 1.5, newId))).toMatchObject({ least: 1, most: 64 });
    expect(problemOf(receiver(1.5, 1.5))).toEqual({ code: 'receiver-channels', least: 1, most: 64 });
    expect(problemOf(receiver(3, -1))).toEqual({ code: 'receiver-channels', least: 1, most: 64 });
    const raster = (rasterKhz: number) => problemOf(describeBand(day, 'b', { ...range, rasterKhz }));
    expect(raster(1)).toBeNull();
    expect(raster(0)).toEqual({ code: 'raster-unusable', rasterKhz: 0 });
    expect(raster(0.5)).toEqual({ code: 'raster-unusable', rasterKhz: 0.5 });
    expect(raster(Number.NaN)).toEqual({ code: 'raster-unusable', rasterKhz: 0 });
  });

  test('a whole card can be full, and not fuller', () => {
    expect(problemOf(describeCard(day, 'c', { bytes: 10, usedBytes: 10 }))).toBeNull();
    expect(problemOf(describeCard(day, 'c', { bytes: 10, usedBytes: 11 }))?.code).toBe('card-over-full');
  });

  test('an eight-way snake has circuits 1 to 8', () => {
    const leads = ['l1', 'l2', 'l3'];
    const onto = (first?: number) => putOnSnake(leads, ' Blue ', 'aes3', first);
    const fields = { ends: 'snake', snake: 'Blue', carries: 'aes3' };
    expect(onto()).toEqual({
      ok: true,
      value: [
        {
          kind: 'leads-described',
          leads: leads.map((lead, at) => ({ lead, fields: { ...fields, circuit: at + 1 } })),
        },
      ],
    });
    expect(onto(6).ok).toBe(true);
    expect(problemOf(onto(7))).toEqual({ code: 'snake-too-short', count: 3, first: 7 });
  });

  test('what left the phone is kept up to what a fact holds', () => {
    const many = (count: number) => Array.from({ length: count }, (_, at) => `${at}${text(200)}`);
    const said = noteSent({
      letter: 'A',
      route: 'mail',
      files: many(21),
      to: many(51),
      made: {} as never,
      from: {} as never,
    });
    const [fact] = said.ok ? said.value : [];
    const { files, to } = fact as never as { files: string[]; to: string[] };
    expect(files).toEqual(many(20).map((name) => name.slice(0, 200)));
    expect(to).toEqual(many(50).map((name) => name.slice(0, 200)));
  });
});

describe('ids and places of what is added', () => {
  test('an id follows from another while it has 64 characters at most', () => {
    expect(idAfter('sel', text(60))).toBe(`sel-${text(60)}`);
    expect(idAfter('sel', text(61))).toBe(text(61));
  });

  test('what is added reads after all that is there', () => {
    expect(nextOrder(speaker().day())).toBe(0);
    const one = speaker();
    const at = (order: number) =>
      one.say({ kind: 'part-described', part: 'x', fields: { type: 'send', name: 'x', order } });
    at(7);
    expect(nextOrder(one.day())).toBe(8);
    at(90_000);
    expect(nextOrder(one.day())).toBe(90_000);
  });
});
