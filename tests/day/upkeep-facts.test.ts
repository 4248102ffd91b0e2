import { describe, expect, test } from 'vitest';
import { carryOver } from '../../src/commands/day/start-day.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { seededBelow } from '../../src/radio/clean/seeded.ts';
import { idSource } from '../../src/shared/ids.ts';
import { MORNING, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

const HOUR = 3_600_000;

describe('what was said of radio, cells and cables', () => {
  test('holds field by field, the later word winning', () => {
    const phone = speaker();
    phone.say({ kind: 'guards-set', guards: { carrierKhz: 300, tvEdgeKhz: 100 } });
    phone.say({ kind: 'guards-set', guards: { carrierKhz: 350 } });
    phone.say({ kind: 'carrier-described', carrier: 'c', fields: { name: 'Comms', khz: 455_500 } });
    phone.say({ kind: 'carrier-described', carrier: 'c', fields: { khz: 456_000 } });
    phone.say({ kind: 'shift-planned', shift: { mealAtMs: MORNING } });
    phone.say({ kind: 'shift-planned', shift: { wrapAtMs: MORNING + HOUR } });
    const { upkeep } = phone.day();
    expect(upkeep.guards).toEqual({ carrierKhz: 350, tvEdgeKhz: 100 });
    expect(upkeep.carriers.get('c')).toEqual({ name: 'Comms', khz: 456_000 });
    expect(upkeep.shift).toEqual({ mealAtMs: MORNING, wrapAtMs: MORNING + HOUR });
  });

  test('a swap remembered late does not undo one made since', () => {
    const phone = speaker();
    phone.say({ kind: 'cells-changed', devices: ['A1'], atMs: MORNING + 4 * HOUR });
    phone.say({ kind: 'cells-changed', devices: ['A1', 'A2'], atMs: MORNING });
    const { cells } = phone.day().upkeep;
    expect(cells.get('A1')?.atMs).toBe(MORNING + 4 * HOUR);
    expect(cells.get('A2')?.atMs).toBe(MORNING);
  });

  test('fresh cells and jams without a time of their own count from when they were said', () => {
    const phone = speaker();
    const [fact] = phone.say({ kind: 'cells-changed', devices: ['A1'] });
    const [jam] = phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder' });
    expect(phone.day().upkeep.cells.get('A1')?.atMs).toBe(fact!.at);
    expect(phone.day().upkeep.jams).toEqual([
      { device: 'slate', from: 'recorder', atMs: jam!.at, by: jam!.id },
    ]);
  });

  test('taken back it was never so, and brought back it is again', () => {
    const phone = speaker();
    phone.say({ kind: 'cells-changed', devices: ['A1'], atMs: MORNING });
    const before = phone.day().upkeep;
    const wrong = phone.id({ kind: 'cells-changed', devices: ['A1', 'A2'], atMs: MORNING + HOUR });
    const after = phone.day().upkeep;
    const undone = phone.id({ kind: 'fact-retracted', targets: [wrong], by: 'undo' });
    expect(phone.day().upkeep).toEqual(before);
    phone.say({ kind: 'fact-retracted', targets: [undone], by: 'redo' });
    expect(phone.day().upkeep).toEqual(after);
  });

  test('changes no chain and has no place on the line', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say(take('24', 2, 1));
    const before = phone.day();
    phone.say({ kind: 'transmitters-switched', transmitters: ['A1'], on: false });
    phone.say({ kind: 'cells-changed', devices: ['A1'] });
    expect(phone.day().line).toEqual(before.line);
    expect(phone.day().tail).toEqual(before.tail);
  });
});

const below = seededBelow(20_261_125);
const one = <T>(...choices: T[]): T => choices[below(choices.length)]!;
const randomSaid = (): Draft =>
  one<Draft>(
    { kind: 'cells-changed', devices: [one('A1', 'A2', 'A3')], atMs: MORNING + below(9) * HOUR },
    { kind: 'devices-jammed', devices: [one('s1', 's2')], from: one('recorder', 's1') },
    { kind: 'devices-described', devices: [one('A1', 's1')], fields: { ppm: below(20), runtimeHours: 5 } },
    { kind: 'transmitters-switched', transmitters: [one('A1', 'A2')], on: below(2) > 0 },
    { kind: 'band-described', band: one('b1', 'b2'), fields: { struck: below(2) > 0, fromKhz: 470_000 } },
    { kind: 'card-described', card: 'c1', fields: { copies: below(3) } },
    { kind: 'run-described', run: 'r1', fields: { metres: 1 + below(90) } },
    { kind: 'leads-described', leads: [{ lead: one('l1', 'l2'), fields: { circuit: 1 + below(8) } }] },
    { kind: 'guards-set', guards: { carrierKhz: below(500) } },
  );

test('gives the same in pieces, in one, and in any order (seed 20261125)', () => {
  const ids = idSource('phonea00000');
  const facts = Array.from({ length: 300 }, (_, at) =>
    stampFacts([randomSaid()], { day: 'd', at: MORNING + at * 60_000, zone: 0, nextId: ids.next }),
  ).flat();
  const once = foldDay('d', facts);
  let pieces = foldDay('d', []);
  for (let at = 0; at < facts.length; at += 7) pieces = appendFacts(pieces, facts.slice(at, at + 7));
  expect(pieces.upkeep).toEqual(once.upkeep);
  expect(foldDay('d', facts.toReversed()).upkeep).toEqual(once.upkeep);
});

test('tomorrow keeps guards, bands, devices, runs and leads, and forgets cells, jams, cards and hours', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG);
  phone.say(
    { kind: 'guards-set', guards: { carrierKhz: 300 } },
    { kind: 'carrier-described', carrier: 'c', fields: { name: 'Comms', khz: 455_500 } },
    { kind: 'carrier-described', carrier: 'gone', fields: { name: 'Old', khz: 455_000, struck: true } },
    { kind: 'devices-described', devices: ['A1'], fields: { runtimeHours: 5 } },
    { kind: 'run-described', run: 'r', fields: { type: 'network', metres: 60 } },
    { kind: 'leads-described', leads: [{ lead: 'l1', fields: { ends: 'xlr' } }] },
    { kind: 'cells-changed', devices: ['A1'] },
    { kind: 'devices-jammed', devices: ['A1'], from: 'recorder' },
    { kind: 'card-described', card: 'k', fields: { bytes: 1e9 } },
    { kind: 'shift-planned', shift: { mealAtMs: MORNING } },
  );
  const said = carryOver(phone.day(), { atMs: MORNING, zone: 120 });
  const tomorrow = speaker('phoneb');
  if (said.ok) tomorrow.say(...said.value);
  const { upkeep } = tomorrow.day();
  expect(upkeep.guards).toEqual({ carrierKhz: 300 });
  expect([...upkeep.carriers.keys()]).toEqual(['c']);
  expect(upkeep.devices.get('A1')).toEqual({ runtimeHours: 5 });
  expect(upkeep.runs.get('r')).toEqual({ type: 'network', metres: 60 });
  expect(upkeep.leads.get('l1')).toEqual({ ends: 'xlr' });
  expect([upkeep.cells.size, upkeep.jams.length, upkeep.cards.size]).toEqual([0, 0, 0]);
  expect(upkeep.shift).toEqual({});
});
