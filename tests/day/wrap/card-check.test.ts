import { expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { cardCheckOf, takesWithoutFile } from '../../../src/day/wrap/card-check.ts';
import { MORNING, speaker, take } from '../say.ts';

const HOUR_MS = 3_600_000;

/** One phone logs and checks; another, which knew nothing of it, has said less and so has lower counters. */
function twoPhones() {
  const [checking, other] = [speaker('phonea'), speaker('phoneb', MORNING + HOUR_MS)];
  const first = checking.id(take('24', 0, 1));
  checking.say(take('24', 0, 2), take('24', 0, 3));
  checking.say({
    kind: 'card-checked',
    files: 3,
    recordings: 3,
    open: 0,
    matched: 3,
    without: [],
    unsure: [],
    unlogged: 0,
  });
  return { checking, other, first };
}

test('takes that another phone logged are not taken for checked because its counters are lower', () => {
  const { checking, other } = twoPhones();
  other.say(take('25', 0, 1));
  const day = foldDay('day-1', [...checking.facts, ...other.facts]);
  expect(cardCheckOf(day)?.takes?.since).toBe(1);
  expect(cardCheckOf(checking.day())?.takes?.since).toBe(0);
});

test('a file that another phone said is missing stays missing though its counters are lower', () => {
  const { checking, other, first } = twoPhones();
  other.say({ kind: 'difference-kept', code: 'take-not-recorded', take: first, as: 'file-missing' });
  const day = foldDay('day-1', [...checking.facts, ...other.facts]);
  expect([...takesWithoutFile(day)]).toEqual([first]);
});
