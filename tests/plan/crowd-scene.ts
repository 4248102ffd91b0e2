import { type Dice, diceOf } from '../../sample-days/dice.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { type Speaker, speaker, take } from '../day/say.ts';

/** The ready rigs, by id. */
export const READY_RIGS = STARTING_RIGS.map(({ id }) => id);

const shuffled = <T>(dice: Dice, items: readonly T[]): T[] => {
  const left = [...items];
  return items.map(() => left.splice(dice.below(left.length), 1)[0]!);
};

function laid(rig: string): Speaker {
  const phone = speaker();
  const said = STARTING_RIGS.find(({ id }) => id === rig)!.lay();
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
  return phone;
}

/** Performers and now and then a plant, in as many ranks as there are of them, in a few, or all alike. */
function crowdOf(dice: Dice, count: number): Draft[] {
  const perRank = dice.pick([1, 5, count]);
  return Array.from({ length: count }, (_value, at): Draft => {
    const kind = dice.below(16) === 0 ? 'plant' : 'performer';
    const fields = { kind, part: `Part ${at + 1}`, priority: 1 + Math.floor(at / perRank) } as const;
    return { kind: 'voice-described', voice: `voice${at + 1}`, fields };
  });
}

/**
 * A ready rig after a scene with part of the crowd: packs on bodies, channels retuned, selectors thrown,
 * something dead, a take logged.
 */
export function crowdPhone(seed: number, rig: string, voices: number): Speaker {
  const dice = diceOf(seed);
  const phone = laid(rig);
  phone.say(...crowdOf(dice, voices - phone.day().voices.size));
  const { rig: parts, voices: cast } = phone.day();
  const packs = shuffled(dice, parts.transmitters);
  const people = shuffled(
    dice,
    [...cast.values()].filter(({ kind }) => kind === 'performer'),
  );
  const worn = packs.slice(0, Math.min(people.length, 4 + dice.below(packs.length - 3)));
  const dead = [packs, parts.channels].filter(() => dice.below(2) === 0);
  phone.say(
    ...worn.map(
      ({ id }, at): Draft => ({ kind: 'transmitter-worn', transmitter: id, voice: people[at]!.id }),
    ),
    ...parts.selectors
      .filter(() => dice.below(3) === 0)
      .map(({ id }): Draft => ({ kind: 'selectors-thrown', selectors: [id], position: 'b' })),
    ...parts.channels
      .filter(() => dice.below(6) === 0)
      .map(({ id }): Draft => {
        const transmitter = dice.pick(packs).id;
        return { kind: 'channels-tuned', tunings: [{ channel: id, transmitter }] };
      }),
    ...dead.map((list): Draft => ({ kind: 'out-marked', part: dice.pick(list).id, out: true })),
  );
  if (dice.below(2) === 0) phone.say(take('24', 0, 1));
  return phone;
}

/** Now everybody is needed at once. */
export function crowdScene(seed: number, rig: string, voices: number): PlanProblem {
  const day = crowdPhone(seed, rig, voices).day();
  return problemOf(day, new Set(day.voices.keys()));
}
