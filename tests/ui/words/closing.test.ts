import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { noteSent } from '../../../src/commands/day/send-report.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { knownOf, latestSent } from '../../../src/day/wrap/sent-reports.ts';
import { lateOnLine } from '../../../src/day/wrap/since-closing.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { lateWords, sentWords, wrapWords } from '../../../src/ui/words/closing.ts';
import { MORNING, take } from '../../day/say.ts';
import { ORDERS_OF_THREE, SetPhone } from '../../day/three-phones.ts';

const NAMES = ['Ana Brandt', 'Jon Berg', 'Ines Roth'];
const MINUTE = 60_000;

function threePhones(): SetPhone[] {
  const phones = NAMES.map((_, which) => new SetPhone(which, which * 5 * 3_600_000));
  for (const [at, phone] of phones.entries())
    phone.say({ kind: 'phone-named', name: NAMES[at]!, job: '' }, MORNING);
  return phones;
}

/** The next report of this phone, with the letter after those it knows. */
function sending(phone: SetPhone): Draft {
  const made = { paper: 'a4' as const, lines: 'take' as const, columns: [], signature: '', matters: [] };
  const letter = String.fromCharCode((latestSent(phone.day())?.letter ?? '@').charCodeAt(0) + 1);
  const from = knownOf(phone.day());
  const said = noteSent({ letter, route: 'share', files: [], to: [], made, from });
  if (!said.ok) throw new Error(said.problem.code);
  return said.value[0]!;
}

/** All that a phone says of how the day was closed. */
function wordsOn({ facts, database }: SetPhone): string[] {
  const day = foldDay('day-1', facts);
  const [wrap, sent] = [day.wrap, latestSent(day)];
  const late = [...lateOnLine(day)].map(([id, one]) => `${id} ${lateWords(one)}`).sort();
  return [
    wrap ? wrapWords(day, wrap, database) : 'open',
    sent ? sentWords(day, sent, null, database) : 'not sent',
    ...late,
  ];
}

describe('three phones', () => {
  test('say the same of wrap and report, in every order of exchange, with clocks hours apart', () => {
    const said = fc.array(
      fc.record({
        who: fc.nat({ max: 2 }),
        what: fc.constantFrom('take', 'take', 'wrap', 'open', 'send', 'hear'),
        from: fc.nat({ max: 2 }),
      }),
      { minLength: 3, maxLength: 16 },
    );
    fc.assert(
      fc.property(said, fc.constantFrom(...ORDERS_OF_THREE), (deeds, [one, two, three]) => {
        const phones = threePhones();
        for (const [at, { who, what, from }] of deeds.entries()) {
          const phone = phones[who]!;
          const trueMs = MORNING + at * MINUTE;
          if (what === 'hear') phone.take(phones[from]!);
          else if (what === 'take') phone.say(take('24', 1, at + 1), trueMs);
          else if (what === 'send') phone.say(sending(phone), trueMs);
          else phone.say({ kind: 'day-wrapped', wrapped: what === 'wrap' }, trueMs);
        }
        for (const [to, from] of [
          [two, one],
          [three, two],
          [one, three],
          [two, one],
        ] as const)
          phones[to]!.take(phones[from]!);
        const [first, second, third] = phones.map(wordsOn);
        expect(second).toEqual(first);
        expect(third).toEqual(first);
      }),
      { numRuns: 150 },
    );
  });

  test('name who wrapped and who sent, and tell what was said after from what came in', () => {
    const [ana, jon] = threePhones() as [SetPhone, SetPhone];
    const known = ana.say(take('24', 1, 1), MORNING);
    jon.take(ana);
    ana.say({ kind: 'day-wrapped', wrapped: true }, MORNING + MINUTE);
    jon.say(take('24', 1, 2), MORNING + 2 * MINUTE);
    jon.take(ana);
    expect(wordsOn(jon)[0]).toBe(
      'Wrapped at 07:01 by Ana Brandt. Since then 1 came in from a phone that had not heard.',
    );
    jon.say({ kind: 'note-added', take: known.id, text: 'plane' }, MORNING + 3 * MINUTE);
    jon.say({ kind: 'note-added', take: known.id, text: 'wind' }, MORNING + 4 * MINUTE);
    ana.take(jon);
    expect(wordsOn(ana)[0]).toBe(
      'Wrapped at 07:01 by Ana Brandt. Since then 2 entries were made, and 1 came in from a phone that had not heard.',
    );
    ana.say(sending(ana), MORNING + 5 * MINUTE);
    const sent = latestSent(ana.day())!;
    expect(sentWords(ana.day(), sent, 1, 'phonea')).toBe(
      'Report A sent at 07:05 by Ana Brandt: 1 change since.',
    );
    expect(sentWords(ana.day(), sent, 0, 'phonea')).toBe(
      'Report A sent at 07:05 by Ana Brandt: nothing in it has changed since.',
    );
    ana.say({ kind: 'note-added', take: known.id, text: 'hum' }, MORNING + 6 * MINUTE);
    const late = lateOnLine(ana.day());
    expect(lateWords(late.get(known.id)!)).toBe('changed after report A');
  });
});

test('phones that nobody named are told apart, and a day of one phone names none', () => {
  const [one, other] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  one.say(take('24', 1, 1), MORNING);
  one.say({ kind: 'day-wrapped', wrapped: true }, MORNING);
  expect(wordsOn(one)[0]).toBe('Wrapped at 07:00.');
  other.take(one);
  other.say(take('24', 1, 2), MORNING + MINUTE);
  one.take(other);
  expect(wordsOn(one)[0]).toBe('Wrapped at 07:00 on this phone. Since then 1 entry was made.');
  expect(wordsOn(other)[0]).toBe('Wrapped at 07:00 on another phone. Since then 1 entry was made.');
});
