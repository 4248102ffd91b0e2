import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { doneByOthers } from '../../../src/day/phones/done-by-others.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { MORNING, take } from '../say.ts';
import { SetPhone } from '../three-phones.ts';

const muted: Draft = { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true };
const idsOf = (facts: readonly Fact[]) => facts.map(({ id }) => id);

/** The utility changes something before and after the mixer's take; the mixer does too. */
function day() {
  const [mixer, utility] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  utility.say({ kind: 'phone-named', name: 'Ines Roth', job: 'Utility' }, MORNING);
  utility.say(muted, MORNING + 1000);
  mixer.take(utility);
  mixer.say(take('24', 1, 1), MORNING + 60_000);
  mixer.say(muted, MORNING + 120_000);
  utility.take(mixer);
  const done = utility.say({ ...muted, muted: false } as Draft, MORNING + 180_000);
  const undone = utility.say(muted, MORNING + 190_000);
  utility.say({ kind: 'fact-retracted', targets: [undone.id], by: 'undo' }, MORNING + 200_000);
  utility.say({ kind: 'note-added', take: mixer.facts.at(-2)!.id, text: 'wind' } as Draft, MORNING + 210_000);
  return { facts: utility.facts, done };
}

describe('what other phones did since the last take', () => {
  test('are their moves that stand, and not one’s own', () => {
    const { facts, done } = day();
    expect(idsOf(doneByOthers(foldDay('day-1', facts), 'phonea'))).toEqual([done.id]);
    expect(idsOf(doneByOthers(foldDay('day-1', facts), 'phoneb'))).toEqual([facts[3]!.id]);
  });

  test('is nothing on a day of one phone', () => {
    const mixer = new SetPhone(0, 0);
    mixer.say(muted, MORNING);
    expect(doneByOthers(mixer.day(), 'phonea')).toEqual([]);
  });
});
