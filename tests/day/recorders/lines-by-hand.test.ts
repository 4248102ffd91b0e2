import { describe, expect, test } from 'vitest';
import { layBeside } from '../../../src/commands/day/lay-beside.ts';
import { correctRolling, rollRecorders } from '../../../src/commands/line/roll-recorders.ts';
import {
  addReceiver,
  addTransmitters,
  layRecorder,
  plugBlock,
  tuneBlock,
} from '../../../src/commands/rig/lay-rig.ts';
import { plugRun } from '../../../src/commands/rig/plug-run.ts';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { type Laying, layingPhone, wearEveryPack } from '../../commands/rig-day.ts';
import { take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../two-recorders.ts';

// Lines laid out on paper, with what is to be read at every take.

const upTo = (count: number): number[] => Array.from({ length: count }, (_, at) => at + 1);

/** The names on the iso tracks in use of a recorder, by track. */
function namesOn(phone: Laying, recorder: string): Record<string, string> {
  const { tracks } = answersNow(phone.day()).recorders.find((one) => one.recorder === recorder)!;
  const used = tracks.filter(({ state }) => state !== 'mix' && state !== 'empty');
  return Object.fromEntries(used.map(({ track, name }) => [track.name, name]));
}

describe('a full bag beside a cart of 32 tracks, with one box of two modules of four for both', () => {
  /** R1 to R8 by the box on the cart's lines 1 to 8; on the bag A1 to A4, B1 to B4, C1 to C8 and two booms. */
  function cartAndFullBag(): Laying {
    const phone = layingPhone();
    phone.run(() => layRecorder({ tracks: 32, inputs: [{ kind: 'line', count: 12 }] }));
    const modules = ['one', 'two'].map((name) => ({ name, channels: 4, outputs: 'analogue' as const }));
    phone.run((day) => addReceiver(day, { name: 'box', place: 'remote', modules }, 'box'));
    phone.run((day) => addTransmitters(day, 'R', 8, phone.newId));
    phone.run((day) =>
      tuneBlock(
        day.rig.channels.map(({ id }) => id),
        day.rig.transmitters.map(({ id }) => id),
      ),
    );
    phone.run(() =>
      plugBlock(
        upTo(8).map((n) => `box-out${n}`),
        upTo(8).map((n) => `line${n}`),
      ),
    );
    const bag = STARTING_RIGS.find(({ id }) => id === 'bag')!.lay();
    phone.run((day) => layBeside(day, bag, { name: 'Bag', receivers: 'all' }));
    phone.say(
      ...['boom1', 'boom2'].map(
        (voice): Draft => ({ kind: 'voice-described', voice, fields: { kind: 'boom', part: voice } }),
      ),
    );
    phone.run((day) => plugRun(day, ['boom1', 'boom2'], inputsCalled(phone, 'in 1', 'in 2')));
    wearEveryPack(phone);
    return phone;
  }

  const bagOf = (phone: Laying): string => phone.day().rig.recorders[0]!.id;
  const inputsCalled = (phone: Laying, ...names: string[]): string[] => {
    const { inputs } = answersNow(phone.day()).recorders[1]!;
    return names.map((name) => inputs.find(({ input }) => input.name === name)!.input.id);
  };
  const on = (letter: string, from: number, to: number, track: number): Record<string, string> =>
    Object.fromEntries(upTo(to - from + 1).map((n) => [`${track + n - 1}`, `On ${letter}${from + n - 1}`]));
  const ON_CART = on('R', 1, 8, 2);
  const SLOTS = { ...on('C', 1, 4, 12), 16: 'On C5, On C6, On C7, On C8' };

  test('each has what is plugged into it', () => {
    const phone = cartAndFullBag();
    expect(namesOn(phone, CART)).toEqual(ON_CART);
    expect(namesOn(phone, bagOf(phone))).toEqual({
      2: 'boom1',
      3: 'boom2',
      ...on('B', 3, 4, 4),
      ...on('A', 1, 4, 6),
      ...on('B', 1, 2, 10),
      ...SLOTS,
    });
    const [cart, bag] = answersNow(phone.day()).recorders;
    expect(cart!.summary).toMatchObject({ tracks: 31, tracksUsed: 8, free: 4, gangs: 0, clashes: 0 });
    expect(bag!.summary).toMatchObject({ tracks: 15, tracksUsed: 15, free: 0, gangs: 1, clashes: 0 });
  });

  test('the first module of the box on the bag too: who was there is off it, and the cart stays as it is', () => {
    const phone = cartAndFullBag();
    const aes = inputsCalled(phone, 'AES 1', 'AES 2', 'AES 3', 'AES 4');
    phone.run((day) =>
      plugRun(
        day,
        upTo(4).map((n) => `box-out${n}`),
        aes,
      ),
    );
    phone.run((day) => rollRecorders(day, [CART, bagOf(phone)]));
    expect(namesOn(phone, CART)).toEqual(ON_CART);
    expect(namesOn(phone, bagOf(phone))).toEqual({
      2: 'boom1',
      3: 'boom2',
      ...on('B', 3, 4, 4),
      ...on('R', 1, 4, 6),
      ...on('B', 1, 2, 10),
      ...SLOTS,
    });
    const heardOn = (where: string) =>
      answersNow(phone.day())
        .voices.filter((one) => one.heardOn === where)
        .map(({ voice }) => voice.part)
        .sort();
    const packs = (letter: string, count: number) => upTo(count).map((n) => `On ${letter}${n}`);
    expect(heardOn('main')).toEqual(packs('R', 8));
    expect(heardOn('backup')).toEqual([...packs('B', 4), ...packs('C', 8), 'boom1', 'boom2']);
    expect(heardOn('none')).toEqual(packs('A', 4));
    expect(answersNow(phone.day()).summary.unrecorded).toHaveLength(4);
    expect(answersNow(phone.day()).summary.clashes).toBe(0);
  });
});

describe('the cart all morning, the bag for three takes in a car, and the cart again', () => {
  const wear = (transmitter: string, voice: string | null, before?: string): Draft => ({
    kind: 'transmitter-worn',
    transmitter,
    voice,
    ...(before && { before }),
  });

  test('with a correction from before the move and one from after, said out of order', () => {
    const phone = layingPhone();
    phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE, {
      kind: 'day-described',
      fields: { recorder: 'Cart' },
    });
    phone.say(wear('A1', 'ines'), wear('A2', 'dora'));
    const logged = (scene: string, count: number) => upTo(count).map((n) => phone.id(take(scene, 0, n)));
    const morning = logged('1', 2);
    phone.run((day) => rollRecorders(day, [BAG]));
    phone.run((day) => plugRun(day, ['near1out', 'near2out'], ['bag-in1', 'bag-aes1']));
    const car = logged('2', 3);
    phone.run((day) => rollRecorders(day, [CART]));
    const evening = logged('3', 2);

    // After the move: Tomas had A2 from the second take of the evening on. Before it: Dora had A1 from the second
    // take of the morning on, and Ines A2.
    phone.say(wear('A2', 'tomas', evening[1]));
    phone.say(wear('A1', 'dora', morning[1]), wear('A2', 'ines', morning[1]));

    const read = [...morning, ...car, ...evening].map((id) => {
      const { main } = answersAtTake(phone.day(), id);
      return [main.recorder, ...main.tracks.filter(({ state }) => state !== 'mix').map(({ name }) => name)];
    });
    expect(read).toEqual([
      [CART, 'Boom', 'Ines', 'Dora', ''],
      [CART, 'Boom', 'Dora', 'Ines', ''],
      [BAG, 'Dora', 'Ines'],
      [BAG, 'Dora', 'Ines'],
      [BAG, 'Dora', 'Ines'],
      [CART, 'Boom', 'Dora', 'Ines', ''],
      [CART, 'Boom', 'Dora', 'Tomas', ''],
    ]);
    for (const id of [...morning, ...car, ...evening])
      expect(answersAtTake(phone.day(), id).summary.clashes).toBe(0);
    // The boom was at the cart: nobody asked for it in the car, and Ines gave up her pack at the end.
    const unrecorded = [...morning, ...car, ...evening].map(
      (id) => answersAtTake(phone.day(), id).summary.unrecorded,
    );
    expect(unrecorded).toEqual([[], [], [], [], [], [], ['ines']]);
  });
});

describe('a backup with tracks of its own all day, which missed two takes', () => {
  test('a voice that only it has is unrecorded on those two, and what clashes on it clashes on the others', () => {
    const phone = layingPhone();
    phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
    phone.say({ kind: 'recorders-rolling', recorders: [CART, BAG] });
    // Ines on the cart and on the backup; Tomas' channel goes to the backup alone, onto the same track.
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    phone.run((day) => plugRun(day, ['near3out'], [null]));
    phone.run((day) => plugRun(day, ['near1out', 'near3out'], ['bag-aes1', 'bag-in1']));
    const both = ['bag-aes1', 'bag-in1'].map((input) => ({ input, tracks: ['bag-tr3'] }));
    phone.say({ kind: 'inputs-sent', routes: both });
    const takes = upTo(5).map((n) => phone.id(take('7', 0, n)));
    phone.run((day) => correctRolling(day, takes[3]!, [CART]));
    phone.run((day) => correctRolling(day, takes[1]!, [CART]));
    const read = takes.map((id) => {
      const { voices, summary } = answersAtTake(phone.day(), id);
      const of = (voice: string) => voices.find((one) => one.voice.id === voice)!;
      return [
        of('ines').heardOn,
        of('tomas').heardOn,
        of('tomas').state,
        summary.clashes,
        summary.unrecorded,
      ];
    });
    const withIt = ['main', 'backup', 'clash', 1, []];
    const without = ['main', 'none', 'unrecorded', 0, ['tomas']];
    expect(read).toEqual([withIt, without, withIt, without, withIt]);
  });
});
