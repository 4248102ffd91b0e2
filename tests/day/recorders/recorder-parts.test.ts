import { describe, expect, test } from 'vitest';
import { carryOver } from '../../../src/commands/day/start-day.ts';
import { bringBackPart, strikePart } from '../../../src/commands/rig/strike-part.ts';
import { underNewIds } from '../../../src/commands/rig/under-new-ids.ts';
import type { Part } from '../../../src/day/model.ts';
import { recorderOfPart } from '../../../src/day/recorder-of-part.ts';
import { inputsOf, ownPartsOf, tracksOf } from '../../../src/day/recorders/recorder-parts.ts';
import { MORNING, type Speaker, speaker, take } from '../say.ts';
import { SMALL_RIG } from '../small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../two-recorders.ts';

const ids = (parts: readonly Part[]): string[] => parts.map(({ id }) => id);

function cartAndBag(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...BAG_BESIDE);
  return phone;
}

describe('the parts of a recorder', () => {
  test('are the inputs, tracks and sends that name it; the rest are the first one’s', () => {
    const { rig } = cartAndBag().day();
    expect(ids(inputsOf(rig, BAG))).toEqual(['bag-in1', 'bag-aes1']);
    expect(ids(tracksOf(rig, BAG))).toEqual(['bag-tr1', 'bag-tr2', 'bag-tr3']);
    expect(ids(ownPartsOf(rig, BAG).sends)).toEqual(['bag-send']);
    expect(ids(inputsOf(rig, CART))).toEqual(['in1', 'aes1', 'aes2', 'aes3']);
    expect(ids(tracksOf(rig, CART))).toEqual(['tr1', 'tr2', 'tr3', 'tr4', 'tr5']);
    expect(ids(ownPartsOf(rig, CART).sends)).toEqual([]);
    expect(recorderOfPart(rig.byId.get('tr1')!)).toBe(CART);
  });

  test('a part that names the first one is the first one’s', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'part-described', part: 'aes2', fields: { recorder: CART } });
    expect(ids(inputsOf(phone.day().rig, CART))).toContain('aes2');
  });

  test('a recorder without tracks of its own records what the first one does', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'part-described', part: 'backup', fields: { type: 'recorder', name: 'Backup' } });
    const { rig } = phone.day();
    expect(tracksOf(rig, 'backup')).toEqual(tracksOf(rig, CART));
    expect(inputsOf(rig, 'backup')).toEqual(inputsOf(rig, CART));
    expect(ownPartsOf(rig, 'backup').tracks).toEqual([]);
  });

  test('on a day with one recorder they are the lists of the rig themselves', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG);
    const { rig } = phone.day();
    expect(tracksOf(rig, CART)).toBe(rig.tracks);
    expect(inputsOf(rig, CART)).toBe(rig.inputs);
  });

  test('go with their recorder when it is deleted, and come back with it', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'part-described', part: 'bag-sel', fields: { type: 'selector', input: 'bag-aes1' } });
    const before = phone.day().rig;
    const struck = strikePart(phone.day(), BAG);
    if (!struck.ok) throw new Error(struck.problem.code);
    phone.say(...struck.value);
    expect(ids([...phone.day().rig.byId.values()]).filter((id) => id.startsWith('bag'))).toEqual([]);
    expect(phone.day().rig.tracks).toHaveLength(5);
    const back = bringBackPart(phone.day(), BAG);
    if (!back.ok) throw new Error(back.problem.code);
    phone.say(...back.value);
    expect(ids([...phone.day().rig.byId.values()])).toEqual(ids([...before.byId.values()]));
  });

  test('are not deleted from under a take that is on it', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'recorders-rolling', recorders: [BAG] }, take('24', 0, 1));
    const said = strikePart(phone.day(), BAG);
    expect(said.ok || said.problem.code).toBe('recorder-rolled');
  });

  test('belong to it under new ids too, and on the next day', () => {
    const laidAnew = underNewIds(cartAndBag().day(), BAG_BESIDE);
    const parts = laidAnew.flatMap((draft) => (draft.kind === 'rig-laid' ? draft.parts : []));
    const anew = parts.find(({ fields }) => fields.type === 'recorder')!.part;
    expect(anew).not.toBe(BAG);
    expect(new Set(parts.flatMap(({ fields }) => fields.recorder ?? []))).toEqual(new Set([anew]));
    const tomorrow = speaker();
    const carried = carryOver(cartAndBag().day(), { atMs: MORNING, zone: 120 });
    if (!carried.ok) throw new Error(carried.problem.code);
    tomorrow.say(...carried.value);
    expect(ids(tracksOf(tomorrow.day().rig, BAG))).toEqual(['bag-tr1', 'bag-tr2', 'bag-tr3']);
  });
});
