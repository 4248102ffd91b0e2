import { describe, expect, test } from 'vitest';
import { appendFacts, foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { counterOf } from '../../../src/shared/ids.ts';
import { MORNING, take } from '../say.ts';
import { SetPhone } from '../three-phones.ts';

const by = { owner: '0f'.repeat(16), signature: 'a9'.repeat(64) };
const WRITER = '1e'.repeat(16);
const removal = (number: number, last: Fact): Draft => ({
  ...{ kind: 'writer-removed', number, writer: WRITER, database: 'phoneb', counted: 1, ...by },
  upTo: counterOf(last.id),
});
const admission = (number: number): Draft => ({
  ...{ kind: 'writer-admitted', number, key: 'b7'.repeat(32), role: 'writer', ...by },
  ...{ name: 'Jon Berg', job: '', database: 'phoneb' },
});

const takesOf = (day: Day): string[] => [...day.takes.keys()].sort();

/** The mixer has heard the first take of the other phone, and removes it; the other says two more. */
function removed() {
  const [mixer, other] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  const counted = other.say(take('24', 1, 1) as Draft, MORNING);
  mixer.take(other);
  const removes = mixer.say(removal(2, counted), MORNING + 1000);
  const late = [
    other.say(take('24', 1, 2) as Draft, MORNING + 2000),
    other.say({ kind: 'fact-retracted', targets: [counted.id], by: 'hand' }, MORNING + 3000),
  ];
  return { mixer, other, counted, removes, late };
}

describe('what a removed phone said after its removal', () => {
  test('does not count, whichever came first, and what it said before does', () => {
    const { counted, removes, late } = removed();
    for (const order of [
      [counted, removes, ...late],
      [...late, counted, removes],
    ])
      expect(takesOf(foldDay('day-1', order))).toEqual([counted.id]);
    expect(takesOf(foldDay('day-1', [counted, ...late]))).toEqual([late[0]!.id]);
  });

  test('does not count when it is added to a day that knows of the removal', () => {
    const { counted, removes, late } = removed();
    const day = appendFacts(foldDay('day-1', [counted, removes]), [late[0]!]);
    expect(takesOf(day)).toEqual([counted.id]);
    expect(day.facts).toContain(late[0]);
  });

  test('goes away when the removal is heard of', () => {
    const { counted, removes, late } = removed();
    const day = appendFacts(foldDay('day-1', [counted, late[0]!]), [removes]);
    expect(takesOf(day)).toEqual([counted.id]);
  });

  test('counts again from where the phone was admitted anew', () => {
    const { mixer, other, counted, removes, late } = removed();
    mixer.take(other);
    const admits = mixer.say(admission(3), MORNING + 4000);
    other.take(mixer);
    const again = other.say(take('24', 1, 3) as Draft, MORNING + 5000);
    const day = foldDay('day-1', [counted, removes, ...late, admits, again]);
    expect(takesOf(day)).toEqual([counted.id, again.id].sort());
  });
});
