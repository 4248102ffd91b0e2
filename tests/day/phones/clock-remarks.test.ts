import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { clockRemarks } from '../../../src/day/phones/clock-remarks.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import type { Fact } from '../../../src/facts/fact.ts';
import { MORNING, speaker, take } from '../say.ts';

const MINUTE = 60_000;

/** Takes of one phone, said when its clock showed these minutes and zones. */
const saidAt = (writer: string, clock: readonly (readonly [minute: number, zone: number])[]): Fact[] => {
  const phone = speaker(writer);
  return clock.map(([minute, zone], at) => ({
    ...phone.say(take('24', 1, at + 1))[0]!,
    at: MORNING + minute * MINUTE,
    zone,
  }));
};

const remarksOn = (...facts: Fact[]) => clockRemarks(foldDay('day-1', facts));

describe('what happened to the clock', () => {
  test('a clock that only goes on is not remarked on, nor is one that steps back a moment', () => {
    expect(
      remarksOn(
        ...saidAt('phonea', [
          [0, 120],
          [10, 120],
          [9.5, 120],
        ]),
      ),
    ).toEqual([]);
  });

  test('a clock set back is remarked on, with by how much, and takes stay in the order they were said', () => {
    const facts = saidAt('phonea', [
      [0, 120],
      [90, 120],
      [31, 120],
    ]);
    expect(remarksOn(...facts)).toEqual([{ kind: 'set-back', by: facts[2]!.id, ms: 59 * MINUTE }]);
    expect(takesInOrder(foldDay('day-1', facts)).map(({ number }) => number)).toEqual([1, 2, 3]);
  });

  test('the end of summer time at night is a change of zone and no clock set back', () => {
    const facts = saidAt('phonea', [
      [0, 120],
      [20, 60],
    ]);
    expect(remarksOn(...facts)).toEqual([{ kind: 'zone-changed', by: facts[1]!.id, from: 120, to: 60 }]);
  });

  test('two phones whose clocks differ are not held against each other', () => {
    expect(remarksOn(...saidAt('phonea', [[90, 120]]), ...saidAt('phoneb', [[0, 60]]))).toEqual([]);
  });
});
