import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { take } from '../../day/say.ts';
import { DAY, NOON, type SealedPhone, sharedDay } from './sealed-phone.ts';

const reportOfPhone = ({ facts }: SealedPhone): string => reportText(reportOf(foldDay(DAY, facts), []));
const idsOf = ({ facts }: SealedPhone): string[] => facts.map(({ id }) => id).sort();

type Step =
  | { readonly deed: 'say'; readonly who: number; readonly number: number }
  | { readonly deed: 'meet'; readonly who: number; readonly with: number; readonly seed: number };

const phone = fc.integer({ min: 0, max: 2 });
const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    fc.record({ deed: fc.constant('say' as const), who: phone, number: fc.integer({ min: 1, max: 6 }) }),
    fc.record({ deed: fc.constant('meet' as const), who: phone, with: phone, seed: fc.nat() }),
  ),
  { minLength: 1, maxLength: 16 },
);

/** The same in another order, which the seed decides. */
function shuffled<T>(all: readonly T[], seed: number): T[] {
  const left = [...all];
  let state = seed + 1;
  return all.map(() => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return left.splice(state % left.length, 1)[0]!;
  });
}

describe('three phones that exchange sealed batches', () => {
  test('come to one day, in any order of saying and meeting, whatever order the batches come in', async () => {
    await fc.assert(
      fc.asyncProperty(steps, fc.nat(), async (told, last) => {
        const { all } = await sharedDay();
        for (const [at, step] of told.entries()) {
          const who = all[step.who]!;
          if (step.deed === 'say') await who.tell(take('24', 1, step.number) as Draft, NOON + at * 60_000);
          else await who.exchange(all[step.with]!, (batches) => shuffled(batches, step.seed));
        }
        // To and fro until nobody lacks anything.
        for (const [reader, giver] of [
          [1, 0],
          [2, 1],
          [0, 2],
          [1, 0],
          [2, 0],
        ] as const)
          await all[reader]!.exchange(all[giver]!, (batches) => shuffled(batches, last));
        const said = told.filter(({ deed }) => deed === 'say').length;
        expect(idsOf(all[0]!)).toHaveLength(said + 3);
        expect(idsOf(all[1]!)).toEqual(idsOf(all[0]!));
        expect(idsOf(all[2]!)).toEqual(idsOf(all[0]!));
        expect(new Set(all.map(reportOfPhone)).size).toBe(1);
      }),
      { numRuns: 30 },
    );
  });

  test('come to one day when one is removed in the middle, whoever heard what of it first', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: 4 }), fc.nat({ max: 4 }), fc.nat(), async (before, after, seed) => {
        const { owner, all } = await sharedDay();
        const [, removed, other] = all as [SealedPhone, SealedPhone, SealedPhone];
        for (const one of [removed, other]) await one.exchange(owner);
        for (let count = 0; count < before; count += 1)
          await removed.tell(take('24', 1, count + 1) as Draft, NOON + count * 60_000);
        await owner.exchange(removed);
        for (let count = 0; count < after; count += 1)
          await removed.tell(take('25', 1, count + 1) as Draft, NOON + (10 + count) * 60_000);
        // The other hears the late ones before it hears of the removal; the owner never does.
        await other.exchange(removed, (batches) => shuffled(batches, seed));
        await owner.remove(removed);
        await other.exchange(owner);
        await owner.exchange(other);
        const takes = all.map(({ facts }) => foldDay(DAY, facts).takeOrder);
        expect(takes[0]).toHaveLength(before);
        expect(takes[2]).toEqual(takes[0]);
        expect(reportOfPhone(other)).toBe(reportOfPhone(owner));
      }),
      { numRuns: 20 },
    );
  });
});
