import type { Draft } from '../../src/facts/fact.ts';
import type { PartFields } from '../../src/facts/kinds/part-described.ts';
import { type Speaker, speaker } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

// Beside the small rig, whose four inputs and tracks are the cart's: a bag of its own.

export const CART = 'recorder';
export const BAG = 'bag';

/** A bag with a mix, two isos, a mic input, an AES input, and a send for comms; nothing is plugged into it. */
export const BAG_BESIDE: Draft[] = [
  {
    kind: 'rig-laid',
    parts: [
      { part: BAG, fields: { type: 'recorder', name: 'Bag' } },
      ...(
        [
          ['bag-tr1', { type: 'track', name: '1', mix: true, tap: 'post' }],
          ['bag-tr2', { type: 'track', name: '2' }],
          ['bag-tr3', { type: 'track', name: '3' }],
          ['bag-in1', { type: 'input', name: 'in 1', inputKind: 'mic' }],
          ['bag-aes1', { type: 'input', name: 'AES 1', inputKind: 'aes3' }],
          ['bag-send', { type: 'send', name: 'comms', reserved: 'comms' }],
        ] satisfies [string, PartFields][]
      ).map(([part, fields]) => ({ part, fields: { ...fields, recorder: BAG } })),
    ],
  },
  {
    kind: 'inputs-sent',
    routes: [
      { input: 'bag-in1', tracks: ['bag-tr2'] },
      { input: 'bag-aes1', tracks: ['bag-tr3'] },
    ],
  },
];

/** Ines on both, Dora on the cart alone, the boom on the bag alone, and both roll. */
export function bothRolling(): Speaker {
  const phone = speaker();
  phone.say(
    { kind: 'day-described', fields: { recorder: 'Cart' } },
    ...SMALL_RIG,
    ...SMALL_CAST,
    ...BAG_BESIDE,
    { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' },
    { kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' },
    { kind: 'leads-plugged', leads: [{ lead: 'bag-l1', from: 'near1out', to: 'bag-aes1' }] },
    { kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: 'bag-in1' }] },
    { kind: 'recorders-rolling', recorders: [CART, BAG] },
  );
  return phone;
}
