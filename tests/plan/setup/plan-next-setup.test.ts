import { describe, expect, test } from 'vitest';
import type { Move } from '../../../src/plan/moves.ts';
import {
  PLAIN_WEIGHTS,
  type PlanPath,
  type PlanProblem,
  type PlanVoice,
} from '../../../src/plan/plan-problem.ts';
import type { Plan } from '../../../src/plan/setup/plan-next-setup.ts';
import { type SceneChange, sceneChange } from '../../bench/assignment-rigs.ts';
import { applyPlan } from '../apply-plan.ts';
import { bestAddition, planNextSetup, whatIf } from '../at-once.ts';
import { asList } from '../every-plan.ts';
import { seeded } from '../random-rig.ts';
import { missingLinks } from '../standing.ts';

const planned = (problem: PlanProblem): Plan => {
  const result = planNextSetup(problem);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};

const list = <T>(length: number, make: (at: number) => T): T[] =>
  Array.from({ length }, (_value, at) => make(at + 1));

const voice = (id: string, more: Partial<PlanVoice> = {}): PlanVoice => ({
  id,
  priority: 1,
  needed: true,
  done: false,
  ...more,
});

const lead = (source: string, input: string, more: Partial<PlanPath> = {}): PlanPath => ({
  id: `${source} to ${input}`,
  source,
  input,
  lead: `lead of ${source}`,
  plugged: true,
  ...more,
});

/** `size` packs A1.., each heard by its own channel R1.., on its own input I1.. and track T1... */
const straightRig = (
  size: number,
  voices: readonly PlanVoice[],
  worn: Record<string, string> = {},
): PlanProblem => ({
  voices,
  transmitters: list(size, (at) => {
    const wornBy = worn[`A${at}`];
    return { id: `A${at}`, ...(wornBy !== undefined && { wornBy }) };
  }),
  channels: list(size, (at) => ({ id: `R${at}`, tunedTo: `A${at}` })),
  selectors: [],
  paths: list(size, (at) => lead(`R${at}`, `I${at}`)),
  inputs: list(size, (at) => ({ id: `I${at}`, track: `T${at}`, canGang: false })),
  tracks: list(size, (at) => ({ id: `T${at}`, iso: true, gangAllowed: false })),
  weights: PLAIN_WEIGHTS,
});

const inWords = (move: Move): string => {
  switch (move.kind) {
    case 'take':
      return `take ${move.transmitter} off ${move.from}: ${move.because.code}`;
    case 'fit':
      return `fit ${move.transmitter} to ${move.to}: ${move.because.code}`;
    case 'throw':
      return `throw ${move.selector} from ${move.from} to ${move.to}`;
    case 'replug':
      return `plug ${move.lead} into ${move.input}`;
    case 'retune':
      return `retune ${move.channel} to ${move.to}`;
    case 'route':
      return `send ${move.input} to ${move.to}: ${move.because.code}`;
  }
};
const said = ({ moves }: Plan): string[] => moves.map(inWords);

describe('the moves', () => {
  test('are none where everybody needed is recorded already', () => {
    expect(planned(straightRig(2, [voice('Ada'), voice('Ben')], { A1: 'Ada', A2: 'Ben' })).moves).toEqual([]);
  });

  test('fit a free pack rather than take one from somebody', () => {
    const plan = planned(
      straightRig(2, [voice('Ada'), voice('Ben', { needed: false, done: true })], { A1: 'Ben' }),
    );
    expect(said(plan)).toEqual(['fit A2 to Ada: has-no-pack']);
  });

  test('free a pack of somebody who is done before it is given, rather than of somebody who waits', () => {
    const voices = [
      voice('Ada', { needed: false }),
      voice('Ben', { needed: false, done: true }),
      voice('Cleo'),
    ];
    const plan = planned(straightRig(2, voices, { A1: 'Ada', A2: 'Ben' }));
    expect(said(plan)).toEqual(['take A2 off Ben: given-to', 'fit A2 to Cleo: has-no-pack']);
  });

  test('take a dead pack off before the new one goes on, and say what is wrong', () => {
    const rig = straightRig(2, [voice('Ada')], { A1: 'Ada' });
    const transmitters = rig.transmitters.map((pack) => (pack.id === 'A1' ? { ...pack, out: true } : pack));
    expect(said(planned({ ...rig, transmitters }))).toEqual([
      'take A1 off Ada: pack-out',
      'fit A2 to Ada: pack-out',
    ]);
  });

  test('retune a channel rather than move a second pack', () => {
    const rig = straightRig(2, [voice('Ada'), voice('Ben')], { A1: 'Ada', A2: 'Ben' });
    const channels = [...rig.channels.filter(({ id }) => id !== 'R2'), { id: 'R3' }];
    const plan = planned({ ...rig, channels, paths: [lead('R1', 'I1'), lead('R3', 'I2')] });
    expect(said(plan)).toEqual(['retune R3 to A2']);
  });

  test('tune away the channels that were on a pack which goes to another, unless those are planned for others', () => {
    const rig = straightRig(
      4,
      [voice('Ada', { pinnedChannel: 'R3' }), voice('Ben', { pinnedChannel: 'R1' })],
      {
        A1: 'Ada',
        A3: 'Ben',
      },
    );
    const channels = rig.channels.map((one) => (one.id === 'R4' ? { id: 'R4', tunedTo: 'A1' } : one));
    const problem = { ...rig, channels };
    const { moves } = planned(problem);
    expect(moves.map(({ because: _reason, ...move }) => move)).toEqual([
      { kind: 'retune', channel: 'R3', from: 'A3', to: 'A1', leaving: ['R4'] },
      { kind: 'retune', channel: 'R1', from: 'A1', to: 'A3' },
    ]);
    expect(applyPlan(problem, moves).channels).toEqual([
      { id: 'R1', tunedTo: 'A3' },
      { id: 'R2', tunedTo: 'A2' },
      { id: 'R3', tunedTo: 'A1' },
      { id: 'R4' },
    ]);
  });

  test('choose the pack that brings a returning voice back to the track it had', () => {
    const voices = [voice('Ada', { lastTrack: 'T3' }), voice('Ben', { lastTrack: 'T1' })];
    const plan = planned(straightRig(3, voices));
    expect(plan.recorded.map(({ voice: id, track }) => [id, track])).toEqual([
      ['Ada', 'T3'],
      ['Ben', 'T1'],
    ]);
  });

  test('swap two packs when pins say so, both off before either goes on', () => {
    const voices = [voice('Ada', { pinnedTransmitter: 'A2' }), voice('Ben', { pinnedTransmitter: 'A1' })];
    expect(said(planned(straightRig(2, voices, { A1: 'Ada', A2: 'Ben' })))).toEqual([
      'take A2 off Ben: given-to',
      'take A1 off Ada: given-to',
      'fit A2 to Ada: pack-given-away',
      'fit A1 to Ben: pack-given-away',
    ]);
  });

  test('can be made in part: what is left is asked for the next time', () => {
    const rig = straightRig(2, [voice('Ada'), voice('Ben')]);
    const [first, ...rest] = planned(rig).moves;
    expect(planned(applyPlan(rig, [first!])).moves).toEqual(rest);
  });
});

// The three check rigs of the trade: common practice, no source.
describe('the sixteen-track bag', () => {
  // Track 1 is the mix. Booms 1 and 2 on inputs 1 and 2; channels 1 to 8 outside on inputs 3 to 10; slots 1 to 8 on inputs
  // 11 to 18. Tracks 2 to 11 take the first ten, 12 to 15 slots 1 to 4, and slots 5 to 8 share track 16.
  const booms = list(2, (at) =>
    voice(`boom ${at}`, { priority: 0, hardline: `boom ${at}`, pinnedInput: `I${at}` }),
  );
  const people = list(16, (at) => voice(`voice ${at}`, { priority: at }));
  const bag: PlanProblem = {
    ...straightRig(16, [...booms, ...people]),
    transmitters: people.map(({ id }, at) => ({ id: `A${at + 1}`, wornBy: id })),
    paths: [
      ...booms.map(({ id }, at) => lead(id, `I${at + 1}`)),
      ...list(16, (at) => lead(`R${at}`, `I${at + 2}`)),
    ],
    inputs: list(18, (at) => ({ id: `I${at}`, track: `T${Math.min(at + 1, 16)}`, canGang: at > 10 })),
    tracks: list(16, (at) => ({ id: `T${at}`, iso: at > 1, gangAllowed: at === 16 })),
  };

  test('records eighteen sources without a move: fourteen alone, one gang of four, none lost', () => {
    const plan = planned(bag);
    const gang = plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0);
    expect(plan.moves).toEqual([]);
    expect(plan.leftOut).toEqual([]);
    expect(plan.recorded).toHaveLength(18);
    expect(gang.map((recorded) => [recorded.voice, recorded.track])).toEqual(
      [13, 14, 15, 16].map((at) => [`voice ${at}`, 'T16']),
    );
  });

  test('gangs only the least important, by retuning, when somebody in the gang becomes important', () => {
    const voices = bag.voices.map((other) => (other.id === 'voice 16' ? { ...other, priority: 0 } : other));
    const plan = planned({ ...bag, voices });
    const gang = plan.recorded
      .filter(({ gangedWith }) => gangedWith.length > 0)
      .map((recorded) => recorded.voice);
    expect(gang).toEqual(['voice 12', 'voice 13', 'voice 14', 'voice 15']);
    expect(plan.moves.map(({ kind }) => kind)).toEqual(['retune', 'retune']);
    expect(Object.values(plan.exact)).toEqual([true, true, true, true, true]);
  });

  test('never gangs a voice that is pinned alone', () => {
    const voices = bag.voices.map((other) => (other.id === 'voice 16' ? { ...other, alone: true } : other));
    const plan = planned({ ...bag, voices });
    const gang = plan.recorded
      .filter(({ gangedWith }) => gangedWith.length > 0)
      .map((recorded) => recorded.voice);
    expect(gang).toEqual(['voice 12', 'voice 13', 'voice 14', 'voice 15']);
  });
});

describe('twelve inputs with a selector each', () => {
  const near = list(12, (at) => lead(`R${at}`, `I${at}`, { selector: { id: `S${at}`, position: 'near' } }));
  const far = list(12, (at) =>
    lead(`R${at + 12}`, `I${at}`, { selector: { id: `S${at}`, position: 'far' } }),
  );
  const rig: PlanProblem = {
    ...straightRig(24, [voice('Ada'), voice('Ben')], { A3: 'Ada', A17: 'Ben' }),
    selectors: list(12, (at) => ({ id: `S${at}`, position: 'near' })),
    paths: [...near, ...far],
    inputs: list(12, (at) => ({ id: `I${at}`, track: `T${at}`, canGang: false })),
  };

  test('throws the one selector that brings the far voice in, and nothing else', () => {
    expect(said(planned({ ...rig, weights: { ...PLAIN_WEIGHTS, retune: 2 } }))).toEqual([
      'throw S5 from near to far',
    ]);
  });

  test('retunes a near channel instead where throwing weighs more', () => {
    const plan = planned({ ...rig, weights: { ...PLAIN_WEIGHTS, throwSelector: 3 } });
    expect(plan.moves.map(({ kind }) => kind)).toEqual(['retune']);
  });

  test('throws a selector that several inputs share only once', () => {
    const shared = (path: PlanPath): PlanPath => ({
      ...path,
      selector: { id: 'bank', position: path.selector!.position },
    });
    const plan = planned({
      ...rig,
      voices: [voice('Ada'), voice('Ben')],
      transmitters: rig.transmitters.map(({ id }) => ({
        id,
        ...(id === 'A15' && { wornBy: 'Ada' }),
        ...(id === 'A17' && { wornBy: 'Ben' }),
      })),
      channels: rig.channels.map((channel) => ({ ...channel, canTune: [] })),
      selectors: [{ id: 'bank', position: 'near' }],
      paths: rig.paths.map(shared),
    });
    expect(said(plan)).toEqual(['throw bank from near to far']);
  });
});

describe('where not everybody can be recorded', () => {
  const short = straightRig(
    2,
    [voice('Ada', { priority: 3 }), voice('Ben'), voice('Cleo', { priority: 2 })],
    {
      A1: 'Ada',
      A2: 'Ben',
    },
  );

  test('the least important is left out, with the reason', () => {
    const plan = planned(short);
    expect(plan.leftOut).toEqual([{ voice: 'Ada', why: { code: 'no-transmitter-left' } }]);
    expect(said(plan)).toEqual(['take A1 off Ada: given-to', 'fit A1 to Cleo: has-no-pack']);
  });

  test('a pack alone would not help where channels are short too, so nothing is suggested', () => {
    expect(bestAddition(short)).toBeUndefined();
  });

  test.each([
    ['transmitter', (rig: PlanProblem) => ({ ...rig, transmitters: rig.transmitters.slice(0, 2) })],
    ['channel', (rig: PlanProblem) => ({ ...rig, channels: rig.channels.slice(0, 2) })],
    ['input', (rig: PlanProblem) => ({ ...rig, inputs: rig.inputs.slice(0, 2) })],
    ['track', (rig: PlanProblem) => ({ ...rig, tracks: rig.tracks.slice(0, 2) })],
  ])('one more %s is suggested where just that is short', (kind, without) => {
    const rig = without(straightRig(3, [voice('Ada'), voice('Ben'), voice('Cleo')]));
    expect(bestAddition(rig)).toMatchObject({ kind, voices: [expect.any(String)] });
    expect(planned(rig).leftOut).toHaveLength(1);
  });

  test('a pin to a dead pack is named as the reason', () => {
    const rig = straightRig(1, [voice('Ada', { pinnedTransmitter: 'A1' })]);
    const plan = planned({ ...rig, transmitters: [{ id: 'A1', out: true }] });
    expect(plan.leftOut).toEqual([
      { voice: 'Ada', why: { code: 'pinned-transmitter-out', transmitter: 'A1' } },
    ]);
  });
});

describe('what if one more were needed', () => {
  const rig = straightRig(
    2,
    [voice('Ada'), voice('Ben', { needed: false, priority: 0 }), voice('Cleo', { priority: 2 })],
    {
      A1: 'Ada',
      A2: 'Cleo',
    },
  );

  test('says who is pushed out and which moves come on top', () => {
    const answer = whatIf(rig, 'Ben');
    if (!answer.ok) throw new Error('no answer');
    expect(answer.value).toMatchObject({
      isRecorded: true,
      pushedOut: ['Cleo'],
      pushedIntoGang: [],
      fewerMoves: [],
    });
    expect(answer.value.moreMoves.map(({ kind }) => kind)).toEqual(['take', 'fit']);
  });

  test('changes nothing for somebody who is needed already', () => {
    const answer = whatIf(rig, 'Ada', planned(rig));
    expect(answer).toMatchObject({
      ok: true,
      value: { moreMoves: [], fewerMoves: [], pushedOut: [], isRecorded: true },
    });
  });
});

describe('a problem that cannot be planned', () => {
  const rig = straightRig(1, [voice('Ada')]);
  test.each([
    [
      { ...rig, inputs: [...rig.inputs, ...rig.inputs] },
      { code: 'id-used-twice', list: 'inputs', id: 'I1' },
    ],
    [
      { ...rig, weights: { ...PLAIN_WEIGHTS, fit: 0 } },
      { code: 'weight-not-whole', name: 'fit', weight: 0 },
    ],
    [
      { ...rig, voices: [voice('Ada', { priority: Number.NaN })] },
      { code: 'priority-not-a-number', voice: 'Ada' },
    ],
    [
      { ...rig, voices: ['Ada', 'Ben'].map((id) => voice(id, { pinnedTransmitter: 'A1' })) },
      { code: 'pinned-twice', transmitter: 'A1' },
    ],
    [
      { ...rig, paths: [lead('R1', 'I1'), lead('R2', 'I1', { lead: 'lead of R1' })] },
      { code: 'lead-of-two-sources', lead: 'lead of R1' },
    ],
  ])('is answered with its fault', (problem, fault) => {
    expect(planNextSetup(problem)).toEqual({ ok: false, problem: fault });
  });

  test('is not one with nobody and nothing in it', () => {
    const empty = { ...rig, voices: [], transmitters: [], channels: [], paths: [], inputs: [], tracks: [] };
    expect(planned(empty)).toMatchObject({ moves: [], recorded: [], leftOut: [] });
  });

  test('names a voice out where the rig is empty', () => {
    const bare = { ...rig, transmitters: [], channels: [], paths: [], inputs: [], tracks: [] };
    expect(planned(bare).leftOut).toEqual([{ voice: 'Ada', why: { code: 'no-transmitter-left' } }]);
  });
});

describe('ordinary and large rigs', () => {
  const base: SceneChange = {
    performers: 24,
    packs: 24,
    needed: 16,
    tracks: 32,
    routing: 'fixed',
    priorities: 'few',
    broken: 1,
    routeWeight: 1,
  };
  const variants: readonly (readonly [name: string, change: Partial<SceneChange>])[] = [
    ['sixteen voices on 32 tracks', {}],
    ['sixteen voices on 32 tracks, any input to any track', { routing: 'free' }],
    ['sixteen voices on 16 tracks', { tracks: 16, priorities: 'distinct' }],
    ['sixteen voices on 16 tracks, any input to any track', { tracks: 16, routing: 'free' }],
    ['sixteen voices with 14 packs', { packs: 14, priorities: 'equal' }],
    ['sixteen voices on 16 tracks, routing free of charge', { tracks: 16, routing: 'free', routeWeight: 0 }],
  ];

  test.each(variants)(
    '%s are exact in all five orders, and applied have no moves left (seeds 1 to 6)',
    (_name, change) => {
      for (let seed = 1; seed <= 6; seed += 1) {
        const rig = sceneChange(seeded(seed), { ...base, ...change });
        const plan = planned(rig);
        expect({ seed, exact: Object.values(plan.exact) }).toEqual({
          seed,
          exact: [true, true, true, true, true],
        });
        const after = applyPlan(rig, plan.moves);
        expect(plan.recorded.flatMap((recorded) => missingLinks(after, recorded))).toEqual([]);
        expect({ seed, moves: planned(after).moves }).toEqual({ seed, moves: [] });
      }
    },
  );

  test('twenty-four voices are answered within the budget, with a bound that is never above the cost (seeds 1 to 6)', () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const rig = sceneChange(seeded(seed), { ...base, needed: 24, tracks: 16, routing: 'free' });
      const plan = planned(rig);
      const [cost, bound] = [asList(plan.cost), asList(plan.bound)];
      const at = cost.findIndex((value, index) => value !== bound[index]);
      expect({ seed, holds: at < 0 || bound[at]! < cost[at]! }).toEqual({ seed, holds: true });
      expect({ seed, upper: [plan.exact.leftOut, plan.exact.ganged] }).toEqual({ seed, upper: [true, true] });
      expect(planned(applyPlan(rig, plan.moves)).moves).toEqual([]);
    }
  });

  test('twenty-eight voices, every one of another priority, still fit the numbers', () => {
    const rig = straightRig(
      24,
      list(28, (at) => voice(`voice ${at}`, { priority: at })),
    );
    const plan = planned(rig);
    expect(plan.leftOut.map(({ voice: id }) => id)).toEqual(['voice 25', 'voice 26', 'voice 27', 'voice 28']);
    expect(Object.values(plan.exact)).toEqual([true, true, true, true, true]);
  });
});
