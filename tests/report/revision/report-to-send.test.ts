import { describe, expect, test } from 'vitest';
import { noteSent } from '../../../src/commands/day/send-report.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import {
  dayWhenSent,
  knownOf,
  latestSent,
  type SentReport,
  sentReports,
} from '../../../src/day/wrap/sent-reports.ts';
import type { Draft, Fact, UnknownFact } from '../../../src/facts/fact.ts';
import type { ReportMade } from '../../../src/facts/kinds/report-sent.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { type ReportModel, reportOf } from '../../../src/report/model.ts';
import { changeText } from '../../../src/report/revision/change.ts';
import { type ReportToSend, reportAgain, reportToSend } from '../../../src/report/revision/report-to-send.ts';
import { speaker, take } from '../../day/say.ts';
import { smallDay } from '../report-day.ts';

const MADE: ReportMade = { paper: 'a4', lines: 'take', columns: ['file'], signature: '', matters: [] };

const modelOf = (day: Day, matters: readonly string[]): ReportModel =>
  reportOf(
    day,
    matters.map((text) => ({ code: 'said-open', text })),
  );
const outgoing = (day: Day, matters: readonly string[] = []): ReportToSend =>
  reportToSend(day, matters, modelOf);
const textOf = ({ model, revision }: ReportToSend): string => reportText(model, { revision });

/** What a phone says when it hands over the report of this day, made with these matters. */
function sending(day: Day, matters: readonly string[] = []): Draft {
  const { letter } = outgoing(day, matters);
  const made = { ...MADE, matters: [...matters] };
  const said = noteSent({ letter, route: 'share', files: ['r.txt'], to: [], made, from: knownOf(day) });
  if (!said.ok) throw new Error(said.problem.code);
  return said.value[0]!;
}

const circle = (id: string, circled = true): Draft => ({
  kind: 'take-described',
  take: id,
  fields: { circled },
});
const letters = (day: Day): string[] => sentReports(day).map(({ letter }) => letter);

describe('the report that goes out', () => {
  test('is A at first, and A again as long as no printed line changes', () => {
    const { phone } = smallDay();
    expect(outgoing(phone.day())).toMatchObject({ letter: 'A', revision: undefined, again: undefined });
    const text = textOf(outgoing(phone.day()));
    const sent = phone.id(sending(phone.day()));
    phone.say({ kind: 'day-described', fields: { slateStyle: 'lettered' } });
    expect(outgoing(phone.day())).toMatchObject({ letter: 'A', revision: undefined, again: { id: sent } });
    expect(textOf(outgoing(phone.day()))).toBe(text);
  });

  test('is B after a late correction and says what changed since A; then C since B', () => {
    const { phone, first } = smallDay();
    phone.say(sending(phone.day()));
    phone.say(circle(first));
    const second = outgoing(phone.day());
    expect(second.revision).toMatchObject({ letter: 'B', since: 'A' });
    expect(second.revision?.changes.map(changeText)).toEqual(['24A/1: status was empty, is circled.']);
    phone.say(sending(phone.day()));
    phone.say(circle(first, false));
    const third = outgoing(phone.day());
    expect(third.revision).toMatchObject({ letter: 'C', since: 'B' });
    expect(third.revision?.changes.map(changeText)).toEqual(['24A/1: status was circled, is empty.']);
  });

  test('says B once more with what changed since A when B is sent twice', () => {
    const { phone, first } = smallDay();
    phone.say(sending(phone.day()));
    phone.say(circle(first));
    const once = textOf(outgoing(phone.day()));
    phone.say(sending(phone.day()));
    const twice = outgoing(phone.day());
    expect(twice).toMatchObject({ letter: 'B', again: { letter: 'B' }, revision: { since: 'A' } });
    expect(textOf(twice)).toBe(once);
    phone.say(sending(phone.day()));
    expect(letters(phone.day())).toEqual(['A', 'B', 'B']);
    expect(textOf(outgoing(phone.day()))).toBe(once);
  });

  test('is a revision too when only what is open changed', () => {
    const { phone } = smallDay();
    phone.say(sending(phone.day(), ['Roll 7A is also a roll of Day 6.']));
    expect(outgoing(phone.day(), ['Roll 7A is also a roll of Day 6.']).letter).toBe('A');
    const { letter, revision } = outgoing(phone.day());
    expect(letter).toBe('B');
    expect(revision?.changes.map(changeText)).toEqual([
      'Not open any more: Roll 7A is also a roll of Day 6.',
    ]);
  });

  test('prints every matter of others, not the first alone', () => {
    const { phone } = smallDay();
    const matters = ['Roll 7A is also a roll of Day 6.', 'Roll 7A is also a roll of Day 5.'];
    expect(outgoing(phone.day(), matters).model.open.map(({ text }) => text)).toEqual(
      expect.arrayContaining(matters),
    );
  });

  test('has the letter once more when the report under it did not go out after all', () => {
    const { phone, first } = smallDay();
    phone.say(sending(phone.day()));
    phone.say(circle(first));
    const wrong = phone.id(sending(phone.day()));
    phone.say({ kind: 'fact-retracted', targets: [wrong], by: 'hand' });
    expect(letters(phone.day())).toEqual(['A']);
    expect(outgoing(phone.day())).toMatchObject({ letter: 'B', again: undefined });
  });
});

describe('reports that two phones sent', () => {
  /** A phone that says many things and sends early, and another that says little and sends `minutes` later. */
  function twoPhones(minutes: number) {
    const here = smallDay().phone;
    const early = here.id(sending(here.day()));
    const sentAt = here.facts.at(-1)!.at;
    const there = speaker('phoneb', sentAt + (minutes - 1) * 60_000);
    const late = there.id(sending(there.day()));
    return { day: foldDay('day-1', [...here.facts, ...there.facts]), here, there, early, late };
  }

  test('stand in the order of time, not of how much each phone had said', () => {
    const { day, early, late } = twoPhones(30);
    expect(late < early).toBe(true);
    expect(sentReports(day).map(({ id }) => id)).toEqual([early, late]);
    expect(latestSent(day)?.id).toBe(late);
  });

  test('of one phone stand as it sent them, also where its clock was set back', () => {
    const { here, there } = twoPhones(30);
    const first = there.facts.at(-1)!;
    const back = { ...first, id: `${first.id.slice(0, 5)}9${first.id.slice(6)}`, at: first.at - 7_200_000 };
    const day = foldDay('day-1', [...here.facts, ...there.facts, back]);
    expect(
      sentReports(day)
        .map(({ id }) => id)
        .slice(-2),
    ).toEqual([first.id, back.id]);
  });
});

describe('a report that went out', () => {
  test('is the same again, whatever is said afterwards', () => {
    const { phone, first, third } = smallDay();
    const texts: string[] = [];
    const send = (): void => {
      texts.push(textOf(outgoing(phone.day(), ['A roll is used twice.'])));
      phone.say(sending(phone.day(), ['A roll is used twice.']));
    };
    send();
    phone.say(circle(first));
    send();
    phone.say({ kind: 'fact-retracted', targets: [third], by: 'hand' }, take('25', 0, 1));
    send();
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Inès' } });
    const day = phone.day();
    expect(sentReports(day).map((sent) => textOf(reportAgain(day, sent, modelOf)))).toEqual(texts);
    expect(new Set(texts).size).toBe(3);
  });

  test('is made from what was known when its files were made, not when they were handed over', () => {
    const { phone, first } = smallDay();
    const made = phone.day();
    const text = textOf(outgoing(made));
    const report = sending(made);
    // While the share sheet is open another window says something.
    phone.say(circle(first));
    phone.say(report);
    const day = phone.day();
    expect(textOf(reportAgain(day, sentReports(day)[0]!, modelOf))).toBe(text);
    expect(outgoing(day)).toMatchObject({ letter: 'B' });
  });

  test('leaves out what another phone had said before it and brought later', () => {
    const here = smallDay();
    const other = speaker('phoneb');
    const late = other.say({ kind: 'day-described', fields: { utility: 'P. Quill' } });
    const text = textOf(outgoing(here.phone.day()));
    here.phone.say(sending(here.phone.day()));
    const merged = foldDay('day-1', [...here.phone.facts, ...late]);
    expect(textOf(reportAgain(merged, sentReports(merged)[0]!, modelOf))).toBe(text);
    expect(outgoing(merged).revision?.changes.map(changeText)).toEqual(['Utility added: P. Quill.']);
  });

  test('is the same after an update that understands what it did not', () => {
    const { phone, first } = smallDay();
    const [fact] = phone.say(circle(first));
    const others = (): Fact[] => phone.facts.filter(({ id }) => id !== fact!.id);
    const before = foldDay('day-1', [...others(), { ...fact!, unknown: true } as UnknownFact]);
    const text = textOf(outgoing(before));
    expect(text).toContain('1 entries were made by a newer version');
    phone.say(sending(before));
    const updated = foldDay('day-1', [...others(), fact!]);
    expect(textOf(reportAgain(updated, sentReports(updated)[0]!, modelOf))).toBe(text);
  });

  test('without a note of what was known is made from all that its phone had said before', () => {
    const { phone, first } = smallDay();
    const text = textOf(outgoing(phone.day()));
    const { from: _from, ...old } = sending(phone.day()) as Draft & { from?: unknown };
    phone.say(old as Draft);
    phone.say(circle(first));
    const day = phone.day();
    const [sent] = sentReports(day) as [SentReport];
    expect(textOf(reportAgain(day, sent, modelOf))).toBe(text);
    expect(dayWhenSent(day, sent).facts).toHaveLength(phone.facts.length - 2);
  });
});
