import { describe, expect, test } from 'vitest';
import { cardCheckOf, isKept, keptDifferences } from '../../../src/day/wrap/card-check.ts';
import { dayWhenSent, knownOf, latestSent, sentReports } from '../../../src/day/wrap/sent-reports.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { MORNING, speaker, take } from '../say.ts';

const report = (letter: string, more: object = {}): Draft =>
  ({
    kind: 'report-sent',
    letter,
    route: 'share',
    files: [],
    to: [],
    made: { paper: 'a4', lines: 'take', columns: [], signature: '', matters: [] },
    ...more,
  }) as Draft;

describe('the reports of a day', () => {
  test('are those not taken back, in the order they went', () => {
    const phone = speaker();
    const [a, b] = [phone.id(report('A')), phone.id(report('B'))];
    expect(sentReports(phone.day()).map(({ id }) => id)).toEqual([a, b]);
    phone.say({ kind: 'fact-retracted', targets: [a], by: 'undo' });
    expect(sentReports(phone.day()).map(({ id }) => id)).toEqual([b]);
  });

  test('have a latest by their letter, and of two with one letter by which went later', () => {
    const phone = speaker();
    expect(latestSent(phone.day())).toBeUndefined();
    const ids = ['B', 'Z', 'AA', 'A', 'B'].map((letter) => phone.id(report(letter)));
    expect(latestSent(phone.day())?.id).toBe(ids[2]);
    expect(latestSent(phone.day(), 'AA')?.id).toBe(ids[1]);
    expect(latestSent(phone.day(), 'Z')?.id).toBe(ids[4]);
    expect(latestSent(phone.day(), 'B')?.id).toBe(ids[3]);
    expect(latestSent(phone.day(), 'A')).toBeUndefined();
    // What is no letter of a revision stands before all of them.
    const odd = phone.id(report('7'));
    expect(latestSent(phone.day(), 'A')?.id).toBe(odd);
  });
});

describe('what was known when a report was made', () => {
  const twoPhones = () => {
    const [a, b] = [speaker('phonea'), speaker('phoneb')];
    a.say(take('24', 1, 1));
    b.say(take('24', 1, 2));
    b.say(take('24', 1, 3));
    a.facts.push(...b.facts);
    return { a, b };
  };

  test('is the highest counter of every writer, and what could not be read', () => {
    const { a } = twoPhones();
    expect(knownOf(a.day())).toEqual({ known: { phonea00000: 1, phoneb00000: 2 } });
    const unknown = { ...a.facts[0]!, id: '000009-phonea00000', kind: 'snake-coiled', unknown: true };
    a.facts.push(unknown as never);
    expect(knownOf(a.day())).toEqual({
      known: { phonea00000: 9, phoneb00000: 2 },
      unread: ['000009-phonea00000'],
    });
    const many = Array.from({ length: 2001 }, (_, at) => ({
      ...unknown,
      id: `${(at + 100).toString(36).padStart(6, '0')}-phonea00000`,
    }));
    a.facts.push(...(many as never[]));
    expect(knownOf(a.day()).unread).toHaveLength(2000);
  });

  test('is the day again, without what was said, merged or learnt to read since', () => {
    const { a } = twoPhones();
    const sent = report('A', { from: { known: { phonea00000: 1, phoneb00000: 1 } } });
    a.say(sent);
    a.say(take('24', 1, 9));
    const day = a.day();
    const then = dayWhenSent(day, sentReports(day)[0]!);
    expect(then.facts.map(({ id }) => id)).toEqual(['000001-phonea00000', '000001-phoneb00000']);
    const unread = report('B', {
      from: { known: { phonea00000: 99, phoneb00000: 99 }, unread: ['000001-phoneb00000'] },
    });
    a.say(unread);
    const later = a.day();
    const without = dayWhenSent(later, latestSent(later)!);
    expect(without.unknown.map(({ id }) => id)).toEqual(['000001-phoneb00000']);
    expect(without.takes.has('000001-phoneb00000')).toBe(false);
  });

  test('is, for the first reports, what its own phone said before, and what it had seen of others', () => {
    const { a, b } = twoPhones();
    const [plain] = a.say(report('A'));
    const sent = { ...plain!, seen: { phoneb: 1 } };
    a.facts[a.facts.indexOf(plain!)] = sent as never;
    a.say(take('24', 1, 9));
    const day = a.day();
    const ids = (seen?: object) =>
      dayWhenSent(day, { ...sentReports(day)[0]!, ...(seen && { seen }) } as never).facts.map(({ id }) => id);
    expect(ids()).toEqual(['000001-phonea00000', b.facts[0]!.id]);
    expect(ids({})).toEqual(['000001-phonea00000']);
    expect(ids({ phoneb: 2 })).toEqual(['000001-phonea00000', b.facts[0]!.id, b.facts[1]!.id]);
  });
});

describe('a card laid beside the log', () => {
  const checked = (open: number): Draft => ({ kind: 'card-checked', files: 12, recordings: 11, open });

  test('is told by its last check that was not taken back, with the differences kept', () => {
    const phone = speaker();
    expect(cardCheckOf(phone.day())).toBeNull();
    const first = phone.id(checked(2));
    const second = phone.id(checked(0));
    const kept = phone.id({ kind: 'difference-kept', code: 'length-differs', file: 'a.wav' });
    phone.say({ kind: 'difference-kept', code: 'length-differs', file: 'b.wav' });
    const again = phone.id({ kind: 'difference-kept', code: 'length-differs', file: 'a.wav' });
    expect(cardCheckOf(phone.day())).toEqual({
      by: second,
      atMs: MORNING + 2 * 60_000,
      zone: 120,
      files: 12,
      recordings: 11,
      open: 0,
      takes: null,
    });
    const isLengthKept = () =>
      isKept(keptDifferences(phone.day()), { code: 'length-differs', file: 'a.wav' });
    expect(isLengthKept()).toBe(true);
    phone.say({ kind: 'fact-retracted', targets: [again, second], by: 'hand' });
    expect(cardCheckOf(phone.day())).toMatchObject({ by: first });
    expect(isLengthKept()).toBe(true);
    phone.say({ kind: 'fact-retracted', targets: [kept], by: 'hand' });
    expect(isLengthKept()).toBe(false);
  });

  test('has one name for one difference', () => {
    const phone = speaker();
    const said = { code: 'length-differs', take: 't', file: 'a.wav', track: 'tr1' };
    phone.say({ kind: 'difference-kept', ...said } as Draft);
    const kept = keptDifferences(phone.day());
    expect(isKept(kept, said)).toBe(true);
    for (const other of [{ code: 'x' }, { take: 'u' }, { file: 'b.wav' }, { track: 'tr2' }])
      expect(isKept(kept, { ...said, ...other })).toBe(false);
  });
});
