import { describe, expect, test } from 'vitest';
import { noteSent } from '../../src/commands/day/send-report.ts';
import type { Day } from '../../src/day/model.ts';
import { knownOf, sentReports } from '../../src/day/wrap/sent-reports.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { ReportMade } from '../../src/facts/kinds/report-sent.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import { changeText } from '../../src/report/revision/change.ts';
import { type ReportToSend, reportAgain, reportToSend } from '../../src/report/revision/report-to-send.ts';
import { besideText } from '../../src/report/revision/revision.ts';
import { MORNING, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { SetPhone } from '../day/three-phones.ts';

const MADE: ReportMade = { paper: 'a4', lines: 'take', columns: ['file'], signature: '', matters: [] };
const MINUTE = 60_000;

const modelOf = (day: Day): ReportModel => reportOf(day);
const outgoing = (day: Day): ReportToSend => reportToSend(day, [], modelOf);
const textOf = ({ model, revision }: ReportToSend): string => reportText(model, { revision });

function send(phone: SetPhone, at: number): ReportToSend {
  const day = phone.day();
  const report = outgoing(day);
  const { letter } = report;
  const said = noteSent({ letter, route: 'share', files: [], to: [], made: MADE, from: knownOf(day) });
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(said.value[0]!, at);
  return report;
}

/** Two phones with the same morning; each logs a take of its own, and sends an A at 18:02 and at 18:05. */
function twoSenders(differ = true) {
  const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  for (const draft of [...SMALL_RIG, ...SMALL_CAST] as Draft[]) a.say(draft, MORNING);
  const first = a.say(take('24', 1, 1), MORNING + MINUTE).id;
  b.take(a);
  if (differ) a.say(take('24', 1, 2), MORNING + 2 * MINUTE);
  if (differ) b.say(take('25', 0, 1), MORNING + 3 * MINUTE);
  const [evening, later] = [MORNING + 662 * MINUTE, MORNING + 665 * MINUTE];
  send(a, evening);
  send(b, later);
  return { a, b, first };
}
const circled = (id: string): Draft => ({ kind: 'take-described', take: id, fields: { circled: true } });

describe('two phones that each sent an A', () => {
  test('give a B that says with which it is compared, and that another A went out, when and from where', () => {
    const { a, b, first } = twoSenders();
    a.take(b);
    a.say(circled(first), MORNING + 700 * MINUTE);
    const report = outgoing(a.day());
    expect(report).toMatchObject({ letter: 'B', again: undefined, revision: { since: 'A' } });
    expect(besideText(report.revision!)).toBe(
      'Two different reports A went out, from two phones: at 2026-10-07 18:02 and at 2026-10-07 18:05. This is compared with the one of 18:05.',
    );
    // The day as the second phone sent it had its own take and not the other's.
    expect(report.revision!.changes.map(changeText)).toEqual([
      expect.stringMatching(/^24A\/2.* added/),
      '24A/1: status was empty, is circled.',
    ]);
    const text = textOf(report).replaceAll(/\s+/g, ' ');
    expect(text).toContain('Two different reports A went out, from two phones: at 2026-10-07 18:02');
    expect(text).toContain('CHANGED SINCE REVISION A');
  });

  test('give a B also where nothing changed since the later A: whoever has the other A lacks something', () => {
    const { a, b } = twoSenders();
    // Only the first phone's A lacks a take once both are merged on the second, which sends no more.
    a.take(b);
    b.take(a);
    for (const phone of [a, b]) {
      const report = outgoing(phone.day());
      expect(report).toMatchObject({ letter: 'B', again: undefined });
      expect(report.revision!.changes.length).toBeGreaterThan(0);
    }
    // A phone whose A had everything.
    const [c, d] = [new SetPhone(2, 0), new SetPhone(3, 0)];
    for (const draft of [...SMALL_RIG, ...SMALL_CAST] as Draft[]) c.say(draft, MORNING);
    c.say(take('24', 1, 1), MORNING + MINUTE);
    d.take(c);
    send(d, MORNING + 2 * MINUTE);
    c.say(take('24', 1, 2), MORNING + 3 * MINUTE);
    send(c, MORNING + 4 * MINUTE);
    d.take(c);
    const report = outgoing(d.day());
    expect(report).toMatchObject({ letter: 'B', revision: { since: 'A' } });
    expect(report.revision!.changes.map(changeText)).toEqual([expect.stringMatching(/^24A\/2 added/)]);
    expect(besideText(report.revision!)).toMatch(/This is compared with the one of 07:02\.$/);
  });

  test('of the same lines are one report: nothing is said of it', () => {
    const { a, b, first } = twoSenders(false);
    a.take(b);
    expect(outgoing(a.day())).toMatchObject({ letter: 'A', again: { letter: 'A' } });
    a.say(circled(first), MORNING + 700 * MINUTE);
    const { revision } = outgoing(a.day());
    expect(revision).toMatchObject({ letter: 'B' });
    expect(besideText(revision!)).toBe('');
  });

  test('and then a B: it is made again as it was sent, and C is compared with B alone', () => {
    const { a, b, first } = twoSenders();
    a.take(b);
    a.say(circled(first), MORNING + 700 * MINUTE);
    const sent = send(a, MORNING + 701 * MINUTE);
    a.say(circled(first), MORNING + 702 * MINUTE);
    a.say(take('26', 0, 1), MORNING + 703 * MINUTE);
    const day = a.day();
    const [, , second] = sentReports(day);
    expect(textOf(reportAgain(day, second!, modelOf))).toBe(textOf(sent));
    const third = outgoing(day);
    expect(third).toMatchObject({ letter: 'C', revision: { since: 'B' } });
    expect(besideText(third.revision!)).toBe('');
  });
});
