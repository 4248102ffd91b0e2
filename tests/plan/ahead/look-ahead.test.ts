import { describe, expect, test } from 'vitest';
import { type AheadPack, fewestFits } from '../../../src/plan/ahead/fewest-fits.ts';
import { aheadOf, withComing } from '../../../src/plan/ahead/look-ahead.ts';
import { PLAIN_WEIGHTS, type PlanProblem } from '../../../src/plan/plan-problem.ts';
import { planNextSetup } from '../at-once.ts';
import { type Next, seeded } from '../random-rig.ts';

/** The fewest fits by trying every pack for everybody in every setup, without a thought. */
function byForce(packs: readonly AheadPack[], setups: readonly ReadonlySet<string>[]): number {
  const [setup, ...rest] = setups;
  if (!setup) return 0;
  let best = Number.POSITIVE_INFINITY;
  const dress = (left: readonly string[], worn: readonly AheadPack[], fits: number): void => {
    const [voice, ...others] = left;
    if (voice === undefined) {
      const all = [...setup].every((one) => worn.some(({ wornBy }) => wornBy === one));
      if (all) best = Math.min(best, fits + byForce(worn, rest));
      return;
    }
    if (worn.some(({ wornBy }) => wornBy === voice)) dress(others, worn, fits);
    for (const pack of worn) {
      if ((pack.only ?? voice) !== voice || pack.wornBy === voice) continue;
      const moved = worn.map((one) => {
        const { wornBy, ...bare } = one;
        if (one === pack) return { ...bare, wornBy: voice };
        return wornBy === voice ? bare : one;
      });
      dress(others, moved, fits + 1);
    }
  };
  dress([...setup], packs, 0);
  return best;
}

const PEOPLE = ['a', 'b', 'c', 'd', 'e'];

function smallDay(next: Next, pins: boolean) {
  const count = 1 + next(3);
  const waiting = [...PEOPLE];
  const packs = Array.from({ length: count }, (_value, at): AheadPack => {
    const wornBy = next(3) > 0 ? waiting.splice(next(waiting.length), 1)[0] : undefined;
    return { id: `p${at + 1}`, ...(wornBy && { wornBy }) };
  });
  const pinned = pins
    ? packs.map((pack, at) => (at === 0 && next(2) ? { ...pack, only: pack.wornBy ?? waiting[0]! } : pack))
    : packs;
  const others = pinned.filter(({ only }) => only === undefined).length;
  const setups = Array.from({ length: 1 + next(4) }, () => {
    const some = new Set<string>();
    while (some.size < Math.min(count, 1 + next(3))) some.add(PEOPLE[next(PEOPLE.length)]!);
    // Everybody must find a pack: those without a pin share the ones that are not pinned.
    const free = [...some].filter((one) => !pinned.some(({ only }) => only === one)).slice(0, others);
    return new Set([...some].filter((one) => free.includes(one) || pinned.some(({ only }) => only === one)));
  });
  return { packs: pinned, setups };
}

describe('the fewest packs to fit over several setups', () => {
  test.each([false, true])('equals every way tried, on small days; pins: %s (seeds 1 to 400)', (pins) => {
    for (let seed = 1; seed <= 400; seed += 1) {
      const { packs, setups } = smallDay(seeded(seed), pins);
      const forced = byForce(packs, setups);
      expect({ seed, ...fewestFits(packs, setups) }).toEqual({ seed, fits: forced, bound: forced });
    }
  });

  test('is bounded from below where there are too many ways', () => {
    const packs = Array.from(
      { length: 9 },
      (_value, at): AheadPack => ({ id: `p${at}`, wornBy: `w${at}`, ...(at === 0 && { only: 'w0' }) }),
    );
    const scene = (from: number) => new Set(Array.from({ length: 8 }, (_value, at) => `n${from + at}`));
    const { fits, bound } = fewestFits(packs, [scene(0), scene(4), scene(8), scene(0)]);
    expect(bound).toBeLessThanOrEqual(fits);
    expect(bound).toBeGreaterThanOrEqual(8 + 4 + 4);
  });
});

/** A rig in which every pack has a channel, an input and a track of its own: only packs are scarce. */
function packRig(
  packs: readonly AheadPack[],
  wanted: ReadonlySet<string>,
  done: readonly string[] = [],
): PlanProblem {
  return {
    voices: PEOPLE.map((id) => ({ id, priority: 0, needed: wanted.has(id), done: done.includes(id) })),
    transmitters: packs.map(({ id, wornBy }) => ({ id, ...(wornBy && { wornBy }) })),
    channels: packs.map(({ id }) => ({ id: `c-${id}`, tunedTo: id })),
    selectors: [],
    paths: packs.map(({ id }) => ({
      id: `l-${id}`,
      source: `c-${id}`,
      input: `i-${id}`,
      lead: `l-${id}`,
      plugged: true,
    })),
    inputs: packs.map(({ id }) => ({ id: `i-${id}`, track: `t-${id}`, canGang: false })),
    tracks: packs.map(({ id }) => ({ id: `t-${id}`, iso: true, gangAllowed: false })),
    weights: PLAIN_WEIGHTS,
  };
}

describe('the plan of the next setup looks ahead', () => {
  const worn = (...names: string[]): AheadPack[] => names.map((wornBy, at) => ({ id: `p${at + 1}`, wornBy }));

  test('it takes the pack of whoever is needed again last, and says who keeps theirs and why', () => {
    const problem = packRig(worn('a', 'b', 'c'), new Set(['d']));
    const coming = [new Set(['a']), new Set(['c', 'a']), new Set(['b'])];
    const asked = withComing(problem, coming);
    const planned = planNextSetup(asked);
    if (!planned.ok) throw new Error(planned.problem.code);
    expect(planned.value.moves.filter(({ kind }) => kind === 'take')).toMatchObject([{ from: 'b' }]);
    expect(aheadOf(asked, planned.value, coming)).toEqual({
      scenes: 3,
      fits: 2,
      bound: 2,
      kept: [
        { voice: 'a', transmitter: 'p1', scene: 0 },
        { voice: 'c', transmitter: 'p3', scene: 1 },
      ],
    });
  });

  test('nothing changes for a day without scenes', () => {
    const problem = packRig(worn('a', 'b'), new Set(['d']));
    expect(withComing(problem, [])).toBe(problem);
    const planned = planNextSetup(problem);
    expect(planned.ok && aheadOf(problem, planned.value, [])).toBeUndefined();
  });

  test('scenes beyond the third are not looked at', () => {
    const problem = packRig(worn('a', 'b'), new Set(['d']));
    const asked = withComing(problem, [new Set(['c']), new Set(['c']), new Set(['c']), new Set(['a'])]);
    expect(asked.voices.find(({ id }) => id === 'a')?.neededAgain).toBeUndefined();
  });

  test('over small days the plan is as good as every way tried (seeds 1 to 150)', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const { packs, setups } = smallDay(seeded(seed), false);
      const wanted = setups[0]!;
      const coming = setups.slice(1);
      const asked = withComing(packRig(packs, wanted), coming);
      const planned = planNextSetup(asked);
      if (!planned.ok) throw new Error(planned.problem.code);
      const ahead = aheadOf(asked, planned.value, coming);
      if (coming.length === 0) continue;
      const forced = byForce(packs, setups);
      expect({ seed, fits: ahead?.fits, bound: ahead?.bound }).toEqual({ seed, fits: forced, bound: forced });
    }
  });
});
