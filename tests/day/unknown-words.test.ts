import { describe, expect, test } from 'vitest';
import { rollTake } from '../../src/commands/line/log-takes.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { sameSlate } from '../../src/day/slate.ts';
import { isOpen, nextTake, takesInOrder } from '../../src/day/takes.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { neededNow } from '../../src/plan/day/plan-facts.ts';
import { speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

/** The small rig and cast, with what a newer version said besides; bodies are as a file has them. */
function dayWith(...said: readonly object[]) {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say(...(said as Draft[]));
  const facts = phone.facts.map((fact: Envelope) => {
    const read = readFact(structuredClone(fact));
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    return read.value;
  });
  return foldDay('day-1', facts);
}

const describePart = (part: string, fields: object) => ({ kind: 'part-described', part, fields });

describe('nothing is claimed from a word that only a newer version knows', () => {
  test('what is kept for such a use is offered to no voice', () => {
    const before = dayWith();
    const input = before.rig.inputs[0]!.id;
    const after = dayWith(describePart(input, { reserved: 'talkback' }));
    const stateOf = (day: typeof before) =>
      answersNow(day).inputs.find((one) => one.input.id === input)!.state;
    expect(stateOf(before)).not.toBe('reserved');
    expect(stateOf(after)).toBe('reserved');
    expect(problemOf(after, new Set()).inputs.map(({ id }) => id)).not.toContain(input);
  });

  test('behind a selector in such a position nobody is called recorded', () => {
    const selector = dayWith().rig.selectors[0];
    const rig = selector
      ? []
      : [
          describePart('sel-9', {
            type: 'selector',
            input: dayWith().rig.inputs[0]!.id,
            positions: ['A', 'B'],
          }),
        ];
    const id = selector?.id ?? 'sel-9';
    const day = dayWith(...rig, { kind: 'selectors-thrown', selectors: [id], position: 'c' });
    const { input } = day.rig.byId.get(id)!;
    const { inputs, voices } = answersNow(day);
    expect(inputs.find((one) => one.input.id === input)).toMatchObject({
      state: 'free',
      reach: { arrival: null },
    });
    expect(voices.flatMap(({ paths }) => paths).some((path) => path.input === input && !path.broken)).toBe(
      false,
    );
  });

  test('whoever has such a need is waited for', () => {
    const voice = [...dayWith().voices.keys()][0]!;
    const day = dayWith({ kind: 'voices-needed', voices: [{ voice, need: 'standing-by' }] });
    expect(neededNow(day)).toContain(voice);
  });

  test('a take whose length was counted at such a rate is not rolling, and has no length here', () => {
    const day = dayWith({
      kind: 'take-logged',
      fields: { kind: 'take', number: 1, rolledAt: 1, length: { frames: 240, rate: '120' } },
    });
    const [only] = takesInOrder(day);
    expect(only).toMatchObject({ length: null, unreadLength: '120' });
    expect(isOpen(only!)).toBe(false);
  });

  test('a take on a board that cannot be read keeps its place, and shares its board with no other', () => {
    const drawn = { style: 'drawn', strokes: 12 };
    const day = dayWith(
      take('24', 1, 1),
      { kind: 'take-logged', fields: { kind: 'take', slate: drawn, number: 1 } },
      { kind: 'take-logged', fields: { kind: 'take', slate: drawn, number: 1 } },
    );
    const [, second, third] = takesInOrder(day);
    expect([second, third].map((one) => one?.slate)).toEqual([
      { style: 'unread', said: 'drawn' },
      { style: 'unread', said: 'drawn' },
    ]);
    expect(sameSlate(second!.slate, third!.slate)).toBe(false);
    // The next take is of the last board that can be read.
    expect(nextTake(day)).toMatchObject({ slate: { style: 'lettered', scene: '24' }, number: 2 });
  });

  test('a take is rolled without a start where the day counts at such a rate', () => {
    const day = dayWith({ kind: 'day-described', fields: { timecodeRate: '120' } });
    const rolled = rollTake(day, { atMs: 1000, zone: 0 });
    expect(rolled).toMatchObject({ ok: true, value: [{ fields: { rolledAt: 1000 } }] });
    expect(rolled.ok && rolled.value[0]).not.toHaveProperty('fields.start');
  });
});
