import { layBeside } from '../../src/commands/day/lay-beside.ts';
import { layRecorder } from '../../src/commands/rig/lay-rig.ts';
import { type Laying, laidRig } from '../commands/rig-day.ts';
import { take } from '../day/say.ts';

export const CAST = ['Ines', 'Dora', 'Tomas', 'Mira', 'Jonas', 'Lene', 'Pavel', 'Ruth'];

/** A cart with a remote box whose eight channels are worn and on its lines; a bag that gets that box by network. */
export function morningOnTheCart(): Laying {
  const phone = laidRig('cart');
  const { rig } = phone.day();
  const packs = rig.transmitters.filter(({ name }) => name.startsWith('B')).slice(0, CAST.length);
  phone.say(
    { kind: 'day-described', fields: { production: 'Harbour Lights', recorder: 'Cart' } },
    ...CAST.map((part, at) => ({
      kind: 'voice-described' as const,
      voice: part,
      fields: { part, priority: at + 1 },
    })),
    ...packs.map(({ id }, at) => ({
      kind: 'transmitter-worn' as const,
      transmitter: id,
      voice: CAST[at]!,
    })),
    {
      kind: 'selectors-thrown',
      selectors: rig.selectors.slice(0, CAST.length).map(({ id }) => id),
      position: 'b',
    },
    take('24', 0, 1),
    take('24', 0, 2),
  );
  phone.run((day) =>
    layBeside(day, layRecorder({ tracks: 10, inputs: [{ kind: 'network', count: 8 }] }), { name: 'Bag' }),
  );
  return phone;
}

/** The same with the bag rolling along from the third take on: it gets all of them but the last. */
export function bothRollAlong(): Laying {
  const phone = morningOnTheCart();
  const { rig } = phone.day();
  const [bag] = rig.recorders;
  const nets = rig.inputs.filter(({ recorder }) => recorder === bag!.id);
  const far = rig.outputs.filter(({ receiver }) => rig.byId.get(receiver ?? '')?.place === 'remote');
  phone.say(
    { kind: 'recorders-rolling', recorders: ['recorder', bag!.id] },
    {
      kind: 'leads-plugged',
      leads: far
        .slice(0, CAST.length - 1)
        .map(({ id }, at) => ({ lead: `bag-${at}`, from: id, to: nets[at]!.id })),
    },
    take('24', 0, 3),
  );
  return phone;
}
