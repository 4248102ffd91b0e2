import { describe, expect, test } from 'vitest';
import { copyRig } from '../../src/commands/day/copy-rig.ts';
import { describePart } from '../../src/commands/day/describe.ts';
import { giveTransmitter } from '../../src/commands/line/change-chain.ts';
import { addInputs, addOutput, addSend, addTracks, unfedTracks } from '../../src/commands/rig/grow-rig.ts';
import { layOn } from '../../src/commands/rig/lay-on.ts';
import {
  addReceiver,
  addSelectors,
  addTransmitters,
  layRecorder,
  plugBlock,
  tuneBlock,
} from '../../src/commands/rig/lay-rig.ts';
import { inputsFrom, outputsFor, pairUp, plugRun } from '../../src/commands/rig/plug-run.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import {
  bringBackPart,
  reservePart,
  strikePart,
  strikeRig,
  struckParts,
} from '../../src/commands/rig/strike-part.ts';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import type { Day } from '../../src/day/model.ts';
import { take } from '../day/say.ts';
import { plugLead } from './plug-lead.ts';
import { laidRig, layingPhone, problemOf, trackNames, wearEveryPack } from './rig-day.ts';

const recorder = () => {
  const phone = layingPhone();
  const inputs = [
    { kind: 'mic', count: 2 },
    { kind: 'aes3', count: 4 },
  ] as const;
  phone.run(() => layRecorder({ tracks: 8, inputs }));
  return phone;
};
const reachedFrom = (day: Day) =>
  answersNow(day).inputs.map(({ input, reach }) => [input.id, reach.arrival?.from ?? null]);

describe('a receiver', () => {
  const spec = (channels: number[], name = 'near') => ({
    name,
    place: 'cart' as const,
    modules: channels.map((count, at) => ({
      name: `m${at + 1}`,
      channels: count,
      outputs: at === 0 ? ('aes3' as const) : ('analogue' as const),
    })),
  });

  test('has channels numbered through its modules, each leaving by an output of its module', () => {
    const phone = recorder();
    phone.run((day) => addReceiver(day, spec([2, 1]), 'near'));
    const { rig } = phone.day();
    expect(rig.channels.map(({ name, module }) => [name, module])).toEqual([
      ['near 1', 'm1'],
      ['near 2', 'm1'],
      ['near 3', 'm2'],
    ]);
    expect(rig.outputs.map(({ outputKind, carries }) => [outputKind, carries])).toEqual([
      ['aes3', ['near-ch1']],
      ['aes3', ['near-ch2']],
      ['analogue', ['near-ch3']],
    ]);
  });

  test.each([[[0]], [[-1, 3]], [[65]], [[Number.NaN]], [[1.5]], [[]], [[Number.POSITIVE_INFINITY]]])(
    'of %j channels is refused',
    (channels) => {
      const said = addReceiver(recorder().day(), spec(channels), 'near');
      expect(problemOf(said)).toEqual({ code: 'receiver-channels', least: 1, most: 64 });
    },
  );

  test('needs a name of its own', () => {
    const phone = recorder();
    phone.run((day) => addReceiver(day, spec([2]), 'near'));
    expect(problemOf(addReceiver(phone.day(), spec([2], ' near '), 'n2'))?.code).toBe('name-taken');
    expect(problemOf(addReceiver(phone.day(), spec([2], '  '), 'n2'))?.code).toBe('name-empty');
    expect(problemOf(addReceiver(phone.day(), spec([2], 'x'.repeat(61)), 'n2'))?.code).toBe('name-too-long');
  });

  test('may let a channel leave by a second output of another kind', () => {
    const phone = recorder();
    phone.run((day) => addReceiver(day, spec([2]), 'near'));
    const second = { name: 'near 1 line', kind: 'analogue', channel: 'near-ch1' } as const;
    phone.run((day) => addOutput(day, 'near', second, 'extra'));
    phone.run((day) => plugRun(day, ['near-out1', 'extra'], ['aes31', 'mic1']));
    phone.run((day) => addTransmitters(day, 'A', 1, () => 'A1'));
    phone.run(() => tuneBlock(['near-ch1'], ['A1']));
    wearEveryPack(phone);
    expect(answersNow(phone.day()).voices[0]).toMatchObject({ state: 'alone', tracks: ['tr4', 'tr2'] });
    expect(problemOf(addOutput(phone.day(), 'near', { ...second, channel: 'no' }, 'e2'))?.code).toBe(
      'not-on-this-day',
    );
  });
});

describe('packs', () => {
  const packs = (day: Day) => day.rig.transmitters.map(({ name }) => name);

  test('are numbered on from those already there', () => {
    const phone = recorder();
    phone.run((day) => addTransmitters(day, 'A', 2, phone.newId));
    phone.run((day) => addTransmitters(day, ' B', 1, phone.newId));
    phone.run((day) => addTransmitters(day, 'A', 2, phone.newId));
    expect(packs(phone.day())).toEqual(['A1', 'A2', 'B1', 'A3', 'A4']);
  });

  test.each([0, -1, 65, 1.5, Number.NaN])('cannot be %j', (count) => {
    const said = addTransmitters(recorder().day(), 'A', count, () => 'x');
    expect(problemOf(said)).toEqual({ code: 'how-many', least: 1, most: 64 });
  });

  test('need letters before the number, and few', () => {
    expect(problemOf(addTransmitters(recorder().day(), ' ', 1, () => 'x'))?.code).toBe('name-empty');
    const long = addTransmitters(recorder().day(), 'A'.repeat(13), 1, () => 'x');
    expect(problemOf(long)).toEqual({ code: 'name-too-long', longest: 12 });
  });
});

describe('a block of outputs', () => {
  const withReceiver = () => {
    const phone = recorder();
    const modules = [{ name: 'digital', channels: 6, outputs: 'aes3' as const }];
    phone.run((day) => addReceiver(day, { name: 'near', place: 'bag', modules }, 'near'));
    return phone;
  };
  const ids = (parts: readonly { id: string }[]) => parts.map(({ id }) => id);

  test('is plugged one to one into a run of inputs of one kind, in one fact, and the rest is left', () => {
    const phone = withReceiver();
    const { rig } = phone.day();
    const outputs = outputsFor(rig, 'near');
    const inputs = inputsFrom(rig, 'aes31');
    expect(ids(pairUp(outputs, inputs).left)).toEqual(['near-out5', 'near-out6']);
    phone.run((day) => plugRun(day, ids(outputs), ids(inputs)));
    expect(phone.facts.filter(({ kind }) => kind === 'leads-plugged')).toHaveLength(1);
    expect(reachedFrom(phone.day())).toEqual([
      ['mic1', null],
      ['mic2', null],
      ...[1, 2, 3, 4].map((n) => [`aes3${n}`, `near-out${n}`]),
    ]);
  });

  test('leaves out outputs and inputs that are reserved', () => {
    const phone = withReceiver();
    phone.run((day) => reservePart(day, 'near-out2', 'comms'));
    phone.run((day) => reservePart(day, 'aes33', 'timecode'));
    const { rig } = phone.day();
    expect(ids(outputsFor(rig, 'near'))).not.toContain('near-out2');
    expect(ids(inputsFrom(rig, 'aes32'))).toEqual(['aes32', 'aes34']);
    expect(ids(outputsFor(rig, 'near', 'no such module'))).toEqual([]);
    expect(inputsFrom(rig, 'no such input')).toEqual([]);
    phone.run((day) => reservePart(day, 'near-out2', null));
    expect(ids(outputsFor(phone.day().rig, 'near'))).toContain('near-out2');
  });

  test('moves leads that are plugged already instead of adding second ones', () => {
    const phone = withReceiver();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'blue', from: 'near-out1', to: 'aes31' }] });
    phone.run((day) => plugRun(day, ['near-out1'], ['aes34']));
    expect(reachedFrom(phone.day())).toContainEqual(['aes34', 'near-out1']);
    expect(reachedFrom(phone.day())).toContainEqual(['aes31', null]);
  });

  test('pushes out what was in those sockets, for good', () => {
    const phone = withReceiver();
    phone.run(() => plugBlock(['near-out1', 'near-out2'], ['aes31', 'aes32']));
    phone.run((day) => plugRun(day, ['near-out3'], ['aes31']));
    phone.run((day) => plugRun(day, ['near-out3'], ['mic1']));
    expect(reachedFrom(phone.day())).toContainEqual(['aes31', null]);
    expect(reachedFrom(phone.day())).toContainEqual(['aes32', 'near-out2']);
  });

  test('goes to one position of the selectors and leaves the leads at the other', () => {
    const phone = withReceiver();
    phone.run((day) => addSelectors(day, ['aes31'], ['cart', 'far']));
    phone.run((day) => plugRun(day, ['near-out1'], ['aes31'], 'a'));
    phone.run((day) => plugRun(day, ['near-out2'], ['aes31'], 'b'));
    const reach = answersNow(phone.day()).inputs.find(({ input }) => input.id === 'aes31')!.reach;
    expect([reach.arrival?.from, reach.away?.from]).toEqual(['near-out1', 'near-out2']);
  });

  test('can be placed before an earlier take', () => {
    const phone = withReceiver();
    const first = phone.id(take('1', 0, 1));
    const second = phone.id(take('1', 0, 2));
    phone.run((day) => plugRun(day, ['near-out1'], ['aes31'], 'a', { before: second }));
    const free = (id: string) => answersAtTake(phone.day(), id).summary.free;
    expect([free(first), free(second)]).toEqual([6, 5]);
  });

  test('is refused where there is nothing on one side or nothing of that name', () => {
    const day = withReceiver().day();
    expect(problemOf(plugRun(day, [], ['aes31']))?.code).toBe('block-empty');
    expect(problemOf(plugRun(day, ['near-out1'], []))?.code).toBe('block-empty');
    expect(problemOf(plugRun(day, ['ghost'], ['aes31']))).toMatchObject({ what: 'output', id: 'ghost' });
    expect(problemOf(plugRun(day, ['near-out1'], ['tr1']))).toMatchObject({ what: 'input', id: 'tr1' });
    expect(problemOf(plugBlock([], ['aes31']))?.code).toBe('block-empty');
    expect(problemOf(tuneBlock([], []))?.code).toBe('block-empty');
  });
});

test('one lead that takes a socket leaves the other hanging, also after it is pulled again', () => {
  const phone = laidRig('modules');
  phone.run(() => plugLead({ lead: 'lead-rx-out5', from: 'rx-out5', to: 'aes31' }));
  expect(reachedFrom(phone.day())).toContainEqual(['aes31', 'rx-out5']);
  phone.run(() => plugLead({ lead: 'lead-rx-out5', from: 'rx-out5', to: null }));
  expect(reachedFrom(phone.day())).toContainEqual(['aes31', null]);
});

describe('a bank of selectors', () => {
  test('is numbered on, and an input has one selector', () => {
    const phone = recorder();
    phone.run((day) => addSelectors(day, ['aes31', 'aes32'], ['cart', 'far']));
    phone.run((day) => addSelectors(day, ['mic1'], [' near ', 'other']));
    expect(phone.day().rig.selectors.map(({ name, bank, positions }) => [name, bank, positions])).toEqual([
      ['selector 1', 'bank 1', ['cart', 'far']],
      ['selector 2', 'bank 1', ['cart', 'far']],
      ['selector 3', 'bank 2', ['near', 'other']],
    ]);
    expect(problemOf(addSelectors(phone.day(), ['aes32'], ['a', 'b']))).toEqual({
      code: 'selector-there',
      input: 'AES 2',
    });
  });

  test('needs inputs and two names', () => {
    const day = recorder().day();
    expect(problemOf(addSelectors(day, [], ['a', 'b']))?.code).toBe('block-empty');
    expect(problemOf(addSelectors(day, ['aes31'], ['a', ' ']))?.code).toBe('name-empty');
    expect(problemOf(addSelectors(day, ['ghost'], ['a', 'b']))?.code).toBe('not-on-this-day');
  });
});

describe('more of the recorder', () => {
  test('inputs are numbered on and take the tracks that nothing feeds, as far as there are any', () => {
    const phone = recorder();
    expect(unfedTracks(phone.day())).toEqual(['tr8']);
    phone.run((day) => addInputs(day, 'mic', 2, phone.newId));
    const added = answersNow(phone.day()).inputs.slice(-2);
    expect(added.map(({ input, reach }) => [input.name, reach.tracks])).toEqual([
      ['in 3', ['tr8']],
      ['in 4', []],
    ]);
    phone.run((day) => addInputs(day, 'network', 1, phone.newId));
    expect(phone.day().rig.inputs.at(-1)?.name).toBe('net 1');
  });

  test('tracks are iso, pre-fader and numbered on', () => {
    const phone = recorder();
    phone.run((day) => addTracks(day, 2, phone.newId));
    expect(phone.day().rig.tracks.slice(-2)).toMatchObject([
      { name: '9', mix: false, tap: 'pre' },
      { name: '10', mix: false, tap: 'pre' },
    ]);
  });

  test('sends bear a name and what they are kept for', () => {
    const phone = recorder();
    phone.run((day) => addSend(day, 'ear feed', 'comms', phone.newId));
    expect(phone.day().rig.sends).toMatchObject([{ name: 'ear feed', reserved: 'comms' }]);
    expect(problemOf(addSend(phone.day(), 'ear feed', null, phone.newId))?.code).toBe('name-taken');
  });

  test.each([0, 65, 0.5, Number.NaN])('cannot grow by %j', (count) => {
    const day = recorder().day();
    expect(problemOf(addInputs(day, 'mic', count, () => 'x'))?.code).toBe('how-many');
    expect(problemOf(addTracks(day, count, () => 'x'))?.code).toBe('how-many');
  });
});

describe('a part renamed', () => {
  test('keeps no name that another of its type has, nor an empty or endless one', () => {
    const day = laidRig('bag').day();
    const rename = (name: string) => problemOf(describePart(day, 'aes31', { name }))?.code ?? 'fine';
    expect(['AES 2', ' ', 'x'.repeat(61), ' AES 1 ', 'AES left'].map(rename)).toEqual([
      'name-taken',
      'name-empty',
      'name-too-long',
      'fine',
      'fine',
    ]);
    expect(problemOf(describePart(day, 'ghost', {}))?.code).toBe('not-on-this-day');
  });
});

describe('a part struck out', () => {
  test('takes what belongs to it along, and all of it comes back as it was', () => {
    const phone = laidRig('cart');
    const { rig } = phone.day();
    const before = reachedFrom(phone.day());
    phone.run((day) => strikePart(day, 'box'));
    expect(phone.day().rig.channels).toHaveLength(12);
    expect(phone.day().rig.outputs).toHaveLength(12);
    expect(struckParts(phone.day()).map(({ name }) => name)).toEqual(['far box']);
    phone.run((day) => bringBackPart(day, 'box'));
    expect([...phone.day().rig.byId.keys()]).toEqual([...rig.byId.keys()]);
    expect(reachedFrom(phone.day())).toEqual(before);
    expect(struckParts(phone.day())).toEqual([]);
  });

  test('takes an input with its selector and a channel with the output that only it leaves by', () => {
    const phone = laidRig('cart');
    phone.run((day) => strikePart(day, 'line5'));
    phone.run((day) => strikePart(day, 'cart-ch1'));
    const { byId } = phone.day().rig;
    expect(['line5', 'sel-line5', 'cart-ch1', 'cart-out1'].filter((id) => byId.has(id))).toEqual([]);
  });

  test('is refused once somebody was recorded by way of it, and so is reserving it', () => {
    const phone = laidRig('bag');
    phone.run((day) => strikePart(day, 'near-ch2'));
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Ines' } });
    phone.run((day) => giveTransmitter(day, 'tx1', 'ines'));
    phone.id(take('24', 1, 1));
    phone.run((day) => giveTransmitter(day, 'tx1', null));
    const day = phone.day();
    for (const part of ['tx1', 'near', 'near-ch1', 'near-out1', 'aes31', 'tr6']) {
      expect(problemOf(strikePart(day, part))).toMatchObject({ code: 'part-recorded', take: '24A/1' });
    }
    expect(problemOf(reservePart(day, 'near-out1', 'comms'))?.code).toBe('part-recorded');
    expect(problemOf(strikeRig(day))?.code).toBe('part-recorded');
    expect(problemOf(strikePart(day, 'tx2'))).toBeNull();
    expect(problemOf(reservePart(day, 'near-out1', null))).toBeNull();
  });

  test('does not come back beside another of its name', () => {
    const phone = recorder();
    phone.run((day) => addTransmitters(day, 'A', 1, phone.newId));
    phone.run((day) => strikePart(day, 'new1'));
    phone.run((day) => addTransmitters(day, 'A', 1, phone.newId));
    expect(problemOf(bringBackPart(phone.day(), 'new1'))).toEqual({ code: 'name-taken', name: 'A1' });
    expect(problemOf(bringBackPart(phone.day(), 'new2'))?.code).toBe('not-taken-back');
  });

  test('makes room for a rig laid anew', () => {
    const phone = laidRig('bag');
    phone.run(strikeRig);
    expect(phone.day().rig.byId.size).toBe(0);
    phone.run((day) => layOn(day, STARTING_RIGS[2]!.lay()));
    expect(phone.day().rig.tracks).toHaveLength(12);
    expect(phone.day().rig.inputs.map(({ name }) => name)).toContain('AES 4');
    expect(problemOf(strikeRig(layingPhone().day()))?.code).toBe('rig-empty');
  });
});

describe('a rig from another day', () => {
  test('comes with its leads, tunings, gangs and hardlines, and nobody wears anything', () => {
    const yesterday = laidRig('bag');
    yesterday.say({ kind: 'voice-described', voice: 'boom1', fields: { part: 'Boom Iva' } });
    wearEveryPack(yesterday);
    const today = layingPhone();
    today.run((day) => copyRig(yesterday.day(), day));
    expect(answersNow(today.day()).summary).toMatchObject({ sources: 2, free: 0, unrecorded: [] });
    expect(trackNames(today.day())).toMatchObject({ tr2: 'Boom Iva', tr3: 'Boom 2', tr6: '' });
    wearEveryPack(today);
    expect(answersNow(today.day()).summary).toMatchObject({ sources: 18, gangs: 1, clashes: 0 });
  });

  test('of another production comes without the people and places of that one', () => {
    const theirs = laidRig('bag');
    theirs.say({ kind: 'day-described', fields: { production: 'Harbour Lights' } });
    theirs.say({ kind: 'voice-described', voice: 'boom1', fields: { person: 'Iva Moss', place: 'quay' } });
    const [ours, others] = ['harbour lights', 'Salt Road'].map((production) => {
      const today = layingPhone();
      today.say({ kind: 'day-described', fields: { production } });
      today.run((day) => copyRig(theirs.day(), day));
      return today.day().voices.get('boom1');
    });
    expect(ours).toMatchObject({ kind: 'boom', person: 'Iva Moss', place: 'quay' });
    expect(others).toMatchObject({ kind: 'boom', person: '', place: '' });
  });

  test('does not respell who is here already, and an empty rig is not copied', () => {
    const today = layingPhone();
    today.say({ kind: 'voice-described', voice: 'boom1', fields: { kind: 'boom', part: 'Boom Piet' } });
    today.run((day) => copyRig(laidRig('bag').day(), day));
    expect(answersNow(today.day()).tracks[1]?.name).toBe('Boom Piet');
    expect(problemOf(copyRig(layingPhone().day(), today.day()))?.code).toBe('rig-empty');
  });
});
