import { describe, expect, test } from 'vitest';
import type { Part } from '../../../src/day/model.ts';
import { blocksOf } from '../../../src/ui/rig/block-fields.tsx';
import { PLUG } from '../../../src/ui/rig/block-tasks.ts';
import { inputOptions, leadOptions } from '../../../src/ui/rig/lead-options.ts';
import { type Speaker, speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';

function wired(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: null }] });
  return phone;
}

const part = (phone: Speaker, id: string): Part => phone.day().rig.byId.get(id)!;

const leadsFor = (phone: Speaker, input: string, current?: string): string[] =>
  leadOptions(phone.day(), undefined, part(phone, input), current).map(
    ({ name, word }) => `${name}: ${word}`,
  );

const inputsFor = (phone: Speaker, output: string, current: string | null, recorder = CART): string[] =>
  inputOptions(phone.day(), undefined, part(phone, output), recorder, current).map(
    ({ name, word }) => `${name}: ${word}`,
  );

describe('a single lead', () => {
  test('into an input: loose ends come first, and the rest say where they are', () => {
    expect(leadsFor(wired(), 'aes2')).toEqual([
      'near 2: no lead',
      'Boom: › in 1',
      'near 1: › AES 1',
      'near 3: › AES 3',
    ]);
  });

  test('into an input of another recorder: what goes to the first one can go there as well', () => {
    const phone = wired();
    phone.say(...BAG_BESIDE, {
      kind: 'leads-plugged',
      leads: [{ lead: 'b3', from: 'near3out', to: 'bag-aes1' }],
    });
    expect(leadsFor(phone, 'bag-aes1', 'near3out')).toEqual([
      'nothing: unplug it',
      'Boom: › Recorder in 1',
      'near 1: › Recorder AES 1',
      'near 2: no lead',
      'near 3: › AES 1',
    ]);
    expect(inputsFor(phone, 'near1out', null, BAG)).toEqual(['AES 1: near 3, A3']);
  });

  test('into an input: only what fits its connector is offered, and what is in it', () => {
    const phone = wired();
    expect(leadsFor(phone, 'in1')).toEqual(['Boom: › in 1']);
    expect(leadsFor(phone, 'in1', 'near1out')).toEqual([
      'nothing: unplug it',
      'Boom: › in 1',
      'near 1: › AES 1',
    ]);
    phone.say({ kind: 'part-described', part: 'aes3', fields: { inputKind: 'slot' } });
    expect(leadsFor(phone, 'aes3')).toEqual([]);
  });

  test('into an input: what is kept for something else is not offered', () => {
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'near3out', fields: { reserved: 'comms' } });
    expect(leadsFor(phone, 'aes1', 'near1out')).toEqual([
      'nothing: unplug it',
      'near 2: no lead',
      'Boom: › in 1',
      'near 1: › AES 1',
    ]);
  });

  test('from an output: free inputs come first, of those that fit its connector', () => {
    expect(inputsFor(wired(), 'near2out', null)).toEqual([
      'AES 2: free',
      'AES 1: near 1, A1',
      'AES 3: near 3, A3',
    ]);
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'near2out', fields: { outputKind: 'analogue' } });
    expect(inputsFor(phone, 'near2out', null)).toEqual(['in 1: Boom, hardline']);
    // Where it is plugged stays, though it does not fit.
    expect(inputsFor(phone, 'near2out', 'aes2')).toEqual([
      'nothing: unplug it',
      'AES 2: free',
      'in 1: Boom, hardline',
    ]);
  });

  test('from an output of a kind that only a newer version knows, every input is offered', () => {
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'near2out', fields: { outputKind: 'laser' as never } });
    expect(inputsFor(phone, 'near2out', null)).toHaveLength(4);
  });
});

describe('patching several', () => {
  const paired = (phone: Speaker, first: string) => {
    const day = phone.day();
    const place = { position: 'a', before: undefined } as const;
    const { pairs, left, except } = PLUG.pairUp(day, blocksOf(day.rig)[0], first, place);
    return {
      pairs: pairs.map(({ from, to, out }) => [from.name, to.name, out ?? ''].join(' ').trim()),
      left: left.map(({ name }) => name),
      except,
    };
  };

  test('offers no lead that is plugged already, and begins at a free input', () => {
    const phone = wired();
    expect(PLUG.likely(phone.day())).toMatchObject({ first: 'aes2' });
    expect(paired(phone, 'aes2')).toEqual({
      pairs: ['near 2 AES 2'],
      left: [],
      except: 'Plugged already, and left as they are: near 1, near 3.',
    });
  });

  test('says whose lead would come out of an input that is taken', () => {
    expect(paired(wired(), 'aes3').pairs).toEqual(['near 2 AES 3 near 3']);
  });

  test('leaves over what does not fit', () => {
    expect(paired(wired(), 'in1')).toMatchObject({ pairs: [], left: ['near 2'] });
  });

  test('has nothing to do where all are plugged', () => {
    const phone = wired();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: 'aes2' }] });
    expect(paired(phone, 'aes1')).toEqual({
      pairs: [],
      left: [],
      except: 'Plugged already, and left as they are: near 1–3.',
    });
  });
});
