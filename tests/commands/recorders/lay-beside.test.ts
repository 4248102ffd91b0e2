import { describe, expect, test } from 'vitest';
import { layBeside, layRigBeside } from '../../../src/commands/day/lay-beside.ts';
import { rollRecorders } from '../../../src/commands/line/roll-recorders.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { addTracks } from '../../../src/commands/rig/grow-rig.ts';
import { layRecorder } from '../../../src/commands/rig/lay-rig.ts';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { strikePart } from '../../../src/commands/rig/strike-part.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import type { Day } from '../../../src/day/model.ts';
import { ownPartsOf } from '../../../src/day/recorders/recorder-parts.ts';
import { recordersOf } from '../../../src/day/recorders/rolling.ts';
import { take } from '../../day/say.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';
import { type Laying, laidRig, layingPhone, problemOf, wearEveryPack } from '../rig-day.ts';

const rigCalled = (id: string) => STARTING_RIGS.find((rig) => rig.id === id)!.lay();
const bagOf = (day: Day): string => day.rig.recorders[0]!.id;
const names = (parts: readonly { name: string }[]): string[] => parts.map(({ name }) => name);

/** What each recorder's inputs get, by their names. */
function arrivalsOn(phone: Laying, recorder: string): Record<string, string> {
  const day = phone.day();
  const { inputs } = answersNow(day).recorders.find((one) => one.recorder === recorder)!;
  return Object.fromEntries(
    inputs.flatMap(({ input, reach }) =>
      reach.arrival ? [[input.name, day.rig.byId.get(reach.arrival.from)?.name ?? '']] : [],
    ),
  );
}

describe('a second rig', () => {
  test('described in a sentence gets inputs and tracks of its own, and stands by', () => {
    const phone = laidRig('modules');
    const before = answersNow(phone.day());
    const spec = {
      tracks: 8,
      inputs: [
        { kind: 'mic', count: 2 },
        { kind: 'aes3', count: 4 },
      ],
    } as const;
    phone.run((day) => layBeside(day, layRecorder(spec), { name: ' Bag ' }));
    const day = phone.day();
    expect(recordersOf(day).map(({ name }) => name)).toEqual(['Recorder', 'Bag']);
    const own = ownPartsOf(day.rig, bagOf(day));
    expect(names(own.tracks)).toEqual(['Mix', '2', '3', '4', '5', '6', '7', '8']);
    expect(names(own.inputs)).toEqual(['in 1', 'in 2', 'AES 1', 'AES 2', 'AES 3', 'AES 4']);
    const bag = answersNow(day).recorders[1]!;
    expect(bag.inputs.map(({ reach }) => reach.tracks.length)).toEqual([1, 1, 1, 1, 1, 1]);
    expect(answersNow(day).summary).toEqual(before.summary);
    phone.run((now) => undo(now, 'phonea'));
    expect(phone.day().rig.recorders).toEqual([]);
  });

  test('from the ready rigs shares packs of one name, and brings its slots', () => {
    const phone = laidRig('cart');
    const packs = phone.day().rig.transmitters.length;
    phone.run((day) => layBeside(day, rigCalled('bag'), { name: 'Bag' }));
    const { rig } = phone.day();
    expect(names(rig.receivers)).toEqual(['cart', 'far box', 'slot']);
    // C1 to C8 come with the slots; the cart has none of them.
    expect(rig.transmitters).toHaveLength(packs + 8);
    expect(arrivalsOn(phone, bagOf(phone.day()))).toEqual(
      Object.fromEntries([1, 2, 3, 4, 5, 6, 7, 8].map((n) => [`slot ${n}`, `slot ${n}`])),
    );
    // Whoever wears one of them is on the bag, the last four in the gang that the rig has there.
    wearEveryPack(phone);
    const bag = answersNow(phone.day()).recorders[1]!;
    expect(bag.summary).toMatchObject({ clashes: 0, gangs: 1 });
    expect(bag.tracks.at(-1)!.state).toBe('gang');
  });

  test('brings all its receivers if it is asked to, tuned to the packs that are there', () => {
    const phone = laidRig('cart');
    phone.run((day) => layBeside(day, rigCalled('bag'), { name: 'Bag', receivers: 'all' }));
    const { rig } = phone.day();
    expect(names(rig.receivers)).toEqual(['cart', 'far box', 'near', 'far', 'slot']);
    expect(new Set(names(rig.transmitters)).size).toBe(rig.transmitters.length);
    wearEveryPack(phone);
    phone.run((day) => rollRecorders(day, [bagOf(day)]));
    const onA1 = answersNow(phone.day()).voices.find(({ voice }) => voice.part === 'On A1')!;
    expect(onA1).toMatchObject({ state: 'alone', heardOn: 'main' });
    expect(answersNow(phone.day()).summary.clashes).toBe(0);
  });

  test('that uses a box the day has gets second leads from it, and the cart keeps its own', () => {
    const phone = laidRig('cart');
    const cart = arrivalsOn(phone, CART);
    phone.run((day) => layBeside(day, rigCalled('cart'), { name: 'Second cart' }));
    const day = phone.day();
    expect(names(day.rig.receivers)).toEqual(['cart', 'far box']);
    expect(arrivalsOn(phone, CART)).toEqual(cart);
    expect(arrivalsOn(phone, bagOf(day))).toEqual(cart);
    // Its selectors are numbered on, in a bank of their own.
    expect(new Set(names(day.rig.selectors)).size).toBe(24);
    expect([...new Set(day.rig.selectors.map(({ bank }) => bank))]).toEqual(['bank 1', 'bank 2']);
  });

  test('from another day is that of one recorder of it, without who was plugged in', () => {
    const other = layingPhone();
    other.say(...SMALL_RIG, ...BAG_BESIDE);
    other.say({ kind: 'leads-plugged', leads: [{ lead: 'x', from: 'near1out', to: 'bag-aes1' }] });
    const phone = laidRig('modules');
    phone.run((day) => layRigBeside(day, other.day(), { name: 'Bag' }, BAG));
    expect(names(ownPartsOf(phone.day().rig, bagOf(phone.day())).tracks)).toEqual(['1', '2', '3']);
    expect(arrivalsOn(phone, bagOf(phone.day()))).toEqual({});
    phone.run((day) => layRigBeside(day, other.day(), { name: 'Other', receivers: 'all' }));
    const third = phone.day().rig.recorders[1]!.id;
    expect(arrivalsOn(phone, third)).toEqual({ 'AES 1': 'near 1', 'AES 2': 'near 2', 'AES 3': 'near 3' });
  });

  test('needs a name that no recorder has, and a rig', () => {
    const day = laidRig('modules').day();
    const spec = layRecorder({ tracks: 2, inputs: [{ kind: 'mic', count: 1 }] });
    expect(problemOf(layBeside(day, spec, { name: '' }))?.code).toBe('name-empty');
    expect(problemOf(layBeside(day, spec, { name: 'Recorder' }))?.code).toBe('name-taken');
    expect(problemOf(layRigBeside(day, layingPhone().day(), { name: 'Bag' }))?.code).toBe('rig-empty');
    const unread = { ok: false, problem: { code: 'rig-empty' } } as const;
    expect(layBeside(day, unread, { name: 'Bag' })).toBe(unread);
  });
});

describe('tracks of its own', () => {
  test('come too late for a recorder whose takes have those of the first one', () => {
    const phone = laidRig('modules');
    phone.say({ kind: 'part-described', part: 'backup', fields: { type: 'recorder', name: 'Backup' } });
    phone.run((day) => addTracks(day, 1, phone.newId, 'backup'));
    phone.run((day) => strikePart(day, ownPartsOf(day.rig, 'backup').tracks[0]!.id));
    phone.say({ kind: 'recorders-rolling', recorders: [CART, 'backup'] }, take('24', 0, 1));
    expect(problemOf(addTracks(phone.day(), 1, phone.newId, 'backup'))).toEqual({
      code: 'tracks-of-first',
      name: 'Backup',
      take: '24/1',
    });
  });

  test('are not deleted to the last from under a take', () => {
    const phone = layingPhone();
    phone.say(...SMALL_RIG, ...BAG_BESIDE, { kind: 'recorders-rolling', recorders: [BAG] }, take('24', 0, 1));
    phone.run((day) => strikePart(day, 'bag-tr1'));
    phone.run((day) => strikePart(day, 'bag-tr2'));
    expect(problemOf(strikePart(phone.day(), 'bag-tr3'))).toEqual({
      code: 'recorder-rolled',
      name: 'Bag',
      take: '24/1',
    });
  });
});
