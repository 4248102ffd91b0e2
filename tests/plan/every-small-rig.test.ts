import { afterAll, describe, expect, test } from 'vitest';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import type { Plan } from '../../src/plan/setup/plan-next-setup.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { applyPlan } from './apply-plan.ts';
import { planNextSetup } from './at-once.ts';
import { asList, bestOfEveryPlan, type Chain, compare, costOfChains, fiveOrders } from './every-plan.ts';
import { type Next, type RigKind, seeded, smallRig } from './random-rig.ts';
import { missingLinks } from './standing.ts';

const planned = (problem: PlanProblem): Plan => {
  const result = planNextSetup(problem);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};

const seeds = (from: number, count: number) => Array.from({ length: count }, (_value, at) => from + at);

const KINDS = ['scarce', 'roomy', 'gangs'] as const;
const anyRig = (seed: number) => smallRig(seed, KINDS[seed % 3]!, 6);

const shuffled = <T>(next: Next, items: readonly T[]): T[] => {
  const left = [...items];
  return items.map(() => left.splice(next(left.length), 1)[0]!);
};

const chainsOf = (problem: PlanProblem, { recorded }: Plan): Chain[] =>
  recorded.map(({ voice, transmitter, path, track }) => ({
    voice: problem.voices.find(({ id }) => id === voice)!,
    ...(transmitter !== undefined && { transmitter }),
    path: problem.paths.find(({ id }) => id === path)!,
    track,
  }));

let tried = 0;
let worse = 0;
afterAll(() => noteFault('plans of small rigs, against every possible plan', `${tried} plans`, worse));

/** So many in the long run, and a fifth of them in the short. */
const some = (count: number): number => (LONG ? count : count / 5);

describe.each<{ kind: RigKind; most: number; from: number; count: number }>([
  { kind: 'scarce', most: 4, from: 1, count: some(300) },
  { kind: 'scarce', most: 6, from: 10_001, count: some(300) },
  { kind: 'roomy', most: 5, from: 20_001, count: some(120) },
  { kind: 'roomy', most: 6, from: 30_001, count: some(30) },
  { kind: 'gangs', most: 5, from: 40_001, count: some(120) },
  { kind: 'gangs', most: 6, from: 50_001, count: some(30) },
])(
  '$kind rigs of up to $most of everything (seeds from $from, $count of them)',
  ({ kind, most, from, count }) => {
    test('cost in all five orders what the best of every possible plan costs, proven', () => {
      let ties = 0;
      for (const seed of seeds(from, count)) {
        const rig = smallRig(seed, kind, most);
        const plan = planned(rig);
        const best = bestOfEveryPlan(rig);
        const cost = fiveOrders(asList(plan.cost));
        tried += 1;
        worse += Number(JSON.stringify(cost) !== JSON.stringify(fiveOrders(best)));
        expect({ seed, cost }).toEqual({ seed, cost: fiveOrders(best) });
        ties += plan.cost.extras === best.at(-1) ? 1 : 0;
        expect({ seed, real: costOfChains(rig, chainsOf(rig, plan)) }).toEqual({
          seed,
          real: asList(plan.cost),
        });
        expect({ seed, bound: fiveOrders(asList(plan.bound)) }).toEqual({
          seed,
          bound: fiveOrders(asList(plan.cost)),
        });
        expect({ seed, exact: Object.values(plan.exact) }).toEqual({
          seed,
          exact: [true, true, true, true, true],
        });
      }
      expect(ties).toBeGreaterThanOrEqual(Math.floor(0.95 * count));
    });

    test('stand in full once the moves are made, and asked again have no moves', () => {
      for (const seed of seeds(from, count)) {
        const rig = smallRig(seed, kind, most);
        const plan = planned(rig);
        const after = applyPlan(rig, plan.moves);
        expect({ seed, missing: plan.recorded.flatMap((voice) => missingLinks(after, voice)) }).toEqual({
          seed,
          missing: [],
        });
        const again = planned(after);
        expect({ seed, moves: again.moves, out: again.leftOut.length }).toEqual({
          seed,
          moves: [],
          out: plan.leftOut.length,
        });
      }
    });
  },
);

describe('any plan', () => {
  test(`is the same whatever the order of the lists, and the same twice (seeds from 60001, ${some(300)} of them)`, () => {
    for (const seed of seeds(60_001, some(300))) {
      const rig = anyRig(seed);
      const next = seeded(seed + 1);
      const mixed: PlanProblem = {
        voices: shuffled(next, rig.voices),
        transmitters: shuffled(next, rig.transmitters),
        channels: shuffled(next, rig.channels),
        selectors: shuffled(next, rig.selectors),
        paths: shuffled(next, rig.paths),
        inputs: shuffled(next, rig.inputs),
        tracks: shuffled(next, rig.tracks),
        weights: rig.weights,
      };
      expect({ seed, plan: planned(mixed) }).toEqual({ seed, plan: planned(rig) });
      expect({ seed, plan: planned(rig) }).toEqual({ seed, plan: planned(rig) });
    }
  });

  test(`with one pack more never records worse by priority (seeds from 70001, ${some(300)} of them)`, () => {
    for (const seed of seeds(70_001, some(300))) {
      const rig = anyRig(seed);
      const more = { ...rig, transmitters: [...rig.transmitters, { id: 'one more' }] };
      const [before, after] = [planned(rig), planned(more)];
      expect({ seed, better: compare(after.cost.leftOut, before.cost.leftOut) <= 0 }).toEqual({
        seed,
        better: true,
      });
    }
  });

  test(`with one pack more never records fewer, where no shared selector or pin sets voices against each other (seeds from 80001, ${some(300)} of them)`, () => {
    for (const seed of seeds(80_001, some(300))) {
      const { voices, paths, ...rest } = anyRig(seed);
      const rig: PlanProblem = {
        ...rest,
        voices: voices.map(({ id, priority, needed, done, hardline, lastTrack }) => ({
          id,
          priority,
          needed,
          done,
          ...(hardline !== undefined && { hardline }),
          ...(lastTrack !== undefined && { lastTrack }),
        })),
        paths: paths.map(({ selector: _shared, ...path }) => path),
        tracks: rest.tracks.map((track) => ({ ...track, gangAllowed: false })),
      };
      const more = { ...rig, transmitters: [...rig.transmitters, { id: 'one more' }] };
      const [before, after] = [planned(rig), planned(more)];
      expect({ seed, fewer: after.recorded.length < before.recorded.length }).toEqual({ seed, fewer: false });
    }
  });

  test(`keeps every pin, gangs only what may be ganged, and frees a pack before giving it (seeds from 90001, ${some(400)} of them)`, () => {
    let pins = 0;
    let gangs = 0;
    for (const seed of seeds(90_001, some(400))) {
      const rig = anyRig(seed);
      const plan = planned(rig);
      const wearer = new Map(rig.transmitters.map(({ id, wornBy }) => [id, wornBy]));
      for (const move of plan.moves) {
        if (move.kind === 'take') {
          expect({ seed, wornBy: wearer.get(move.transmitter) }).toEqual({ seed, wornBy: move.from });
          wearer.delete(move.transmitter);
        }
        if (move.kind !== 'fit') continue;
        expect({ seed, wornBy: wearer.get(move.transmitter) }).toEqual({ seed, wornBy: undefined });
        expect({ seed, worn: [...wearer.values()].includes(move.to) }).toEqual({ seed, worn: false });
        wearer.set(move.transmitter, move.to);
      }
      for (const { voice: id, transmitter, input, track, gangedWith } of plan.recorded) {
        const voice = rig.voices.find((other) => other.id === id)!;
        pins += voice.pinnedTransmitter || voice.pinnedInput || voice.pinnedTrack || voice.alone ? 1 : 0;
        expect([undefined, transmitter]).toContain(voice.pinnedTransmitter);
        expect([undefined, input]).toContain(voice.pinnedInput);
        expect([undefined, track]).toContain(voice.pinnedTrack);
        const pinnedTo = rig.voices.find((other) => other.pinnedTransmitter === transmitter && transmitter);
        expect([undefined, id]).toContain(pinnedTo?.id);
        if (gangedWith.length === 0) continue;
        gangs += 1;
        expect(voice.alone ?? false).toBe(false);
        expect(rig.inputs.find((other) => other.id === input)!.canGang).toBe(true);
        expect(rig.tracks.find((other) => other.id === track)!.gangAllowed).toBe(true);
      }
    }
    expect(pins).toBeGreaterThan(some(50));
    expect(gangs).toBeGreaterThan(20);
  });
});
