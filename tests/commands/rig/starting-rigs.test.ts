import { describe, expect, test } from 'vitest';
import { throwSelectors } from '../../../src/commands/line/change-chain.ts';
import { outputsFor, plugRun } from '../../../src/commands/rig/plug-run.ts';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { laidRig, problemOf, trackNames, wearEveryPack } from '../rig-day.ts';

test.each(STARTING_RIGS.map(({ id }) => id))('%s: is laid in one action that can be read back', (id) => {
  const phone = laidRig(id);
  expect(phone.day().rig.tracks[0]).toMatchObject({ mix: true });
  expect(answersNow(phone.day()).summary).toMatchObject({ clashes: 0, muted: 0 });
});

// The check values below are common practice, no source.

describe('a bag of sixteen tracks with eighteen sources', () => {
  const worn = () => {
    const phone = laidRig('bag');
    wearEveryPack(phone);
    return phone.day();
  };

  test('records all eighteen on fifteen iso tracks: no input free, one gang of four, none lost', () => {
    const { summary, tracks, voices } = answersNow(worn());
    expect(summary).toEqual({
      sources: 18,
      tracksUsed: 15,
      tracks: 15,
      free: 0,
      gangs: 1,
      clashes: 0,
      muted: 0,
      unrecorded: [],
    });
    expect(tracks.find(({ state }) => state === 'gang')?.heard).toHaveLength(4);
    expect(voices).toHaveLength(18);
    expect(voices.filter(({ state }) => state === 'alone')).toHaveLength(14);
  });

  test('puts each source on the track it belongs to', () => {
    expect(Object.values(trackNames(worn()))).toEqual([
      'Mix',
      'Boom 1',
      'Boom 2',
      'On B3',
      'On B4',
      'On A1',
      'On A2',
      'On A3',
      'On A4',
      'On B1',
      'On B2',
      'On C1',
      'On C2',
      'On C3',
      'On C4',
      'On C5, On C6, On C7, On C8',
    ]);
  });
});

describe('a cart with a far box', () => {
  const worn = () => {
    const phone = laidRig('cart');
    wearEveryPack(phone);
    return phone;
  };

  test('changes who is on input 5, and nothing else, when selector 5 is thrown', () => {
    const phone = worn();
    const before = answersNow(phone.day());
    phone.run((day) => throwSelectors(day, ['sel-line5'], 'b'));
    const after = answersNow(phone.day());
    const on = ({ inputs }: typeof before) => inputs.map(({ reach }) => reach.arrival?.sources[0]?.voice);
    const changed = after.inputs.filter((_, at) => on(before)[at] !== on(after)[at]);
    expect(changed.map(({ input }) => input.name)).toEqual(['line 5']);
    expect(before.tracks[5]?.name).toBe('On A5');
    expect(after.tracks[5]?.name).toBe('On B5');
    expect(after.tracks.filter(({ name }, at) => name !== before.tracks[at]!.name)).toHaveLength(1);
    expect(phone.day().rig.byId.get('sel-line5')?.name).toBe('selector 5');
  });

  test('throws the whole bank in one action', () => {
    const phone = worn();
    const bank = phone.day().rig.selectors.map(({ id }) => id);
    expect(bank).toHaveLength(12);
    phone.run((day) => throwSelectors(day, bank, 'b'));
    expect(phone.facts.filter(({ kind }) => kind === 'selectors-thrown')).toHaveLength(1);
    expect(Object.values(trackNames(phone.day())).slice(1, 13)).toEqual(
      Array.from({ length: 12 }, (_, at) => `On B${at + 1}`),
    );
  });

  test('never offers the outputs that carry timecode and comms, nor lets one into an input', () => {
    const { rig } = laidRig('cart').day();
    const kept = rig.outputs.filter(({ reserved }) => reserved).map(({ reserved }) => reserved);
    expect(kept).toEqual(['timecode', 'comms']);
    expect(outputsFor(rig, 'box').map(({ name }) => name)).toEqual(
      Array.from({ length: 12 }, (_, at) => `far box ${at + 1}`),
    );
    const plugged = plugRun(laidRig('cart').day(), ['box-out13'], ['line1']);
    expect(problemOf(plugged)).toEqual({ code: 'output-reserved', name: 'far box 13', kept: 'timecode' });
  });
});

describe('a receiver of two modules', () => {
  test('leaves by four AES3 channels near and four lines far, each on a track of its own', () => {
    const phone = laidRig('modules');
    const { rig } = phone.day();
    const kinds = (module: string) => outputsFor(rig, 'rx', module).map(({ outputKind }) => outputKind);
    expect(kinds('near')).toEqual(['aes3', 'aes3', 'aes3', 'aes3']);
    expect(kinds('far')).toEqual(['analogue', 'analogue', 'analogue', 'analogue']);
    wearEveryPack(phone);
    const { inputs, summary } = answersNow(phone.day());
    const reached = inputs.filter(({ reach }) => reach.arrival);
    expect(reached.map(({ input, reach }) => [input.name, reach.arrival?.sources[0]?.voice])).toEqual([
      ...[1, 2, 3, 4].map((n) => [`AES ${n}`, `on-tx${n}`]),
      ...[5, 6, 7, 8].map((n) => [`line ${n - 4}`, `on-tx${n}`]),
    ]);
    expect(summary).toMatchObject({ sources: 8, gangs: 0, clashes: 0, unrecorded: [], free: 3 });
  });
});
