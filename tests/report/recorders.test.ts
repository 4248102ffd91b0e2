import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { correctRolling, rollRecorders } from '../../src/commands/line/roll-recorders.ts';
import { SECOND_FORM } from '../../src/report/form.ts';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { printedTake } from '../../src/report/printed/printed-take.ts';
import { reportChanges } from '../../src/report/revision/report-changes.ts';
import { speaker, take } from '../day/say.ts';

/** A backup all day that missed two takes, beside a setup without sound. */
function backedUp() {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } });
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b'] });
  const takes = [1, 2, 3, 4, 5].map((number) => phone.id(take('24', 0, number)));
  phone.say(take('24', 1, 1, { kind: 'mos', start: null, length: null }));
  for (const missed of [takes[1]!, takes[3]!]) {
    const said = correctRolling(phone.day(), missed, ['recorder']);
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
  }
  return { phone, takes };
}

const flowing = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('a backup that missed two takes, in the report', () => {
  test('the head says of each recorder which takes it has', () => {
    const text = flowing(reportText(reportOf(backedUp().phone.day())));
    expect(text).toContain('Recorder Cart, all 5 takes Recorder 2 Backup, 3 of 5 takes, not 24/2, 24/4');
    expect(reportHtml(reportOf(backedUp().phone.day()))).toContain('Backup, 3 of 5 takes, not 24/2, 24/4');
  });

  test('a take that is not on all says which it is on, and a take that is says nothing', () => {
    const lines = reportText(reportOf(backedUp().phone.day())).split('\n');
    // What does not fit stands on the line under it.
    const line = (name: string) => {
      const at = lines.findIndex((one) => one.startsWith(` ${name} `));
      return flowing(`${lines[at]} ${lines[at + 1]}`);
    };
    expect(line('24/1')).not.toContain('Cart');
    expect(line('24/2')).toContain('on Cart only');
    expect(line('24/3')).not.toContain('Cart');
    expect(line('24/4')).toContain('on Cart only');
    expect(lines.find((one) => one.includes('MOS'))).not.toContain('Cart');
  });

  test('what stands by before and after misses nothing: only the takes beside its own say so, for all from there', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
    phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } });
    for (const [number, recorders] of [
      [1, ['recorder']],
      [2, ['recorder']],
      [3, ['recorder', 'b']],
      [4, ['recorder']],
      [5, ['recorder', 'b']],
      [6, ['recorder']],
      [7, ['recorder']],
    ] as const) {
      phone.say({ kind: 'recorders-rolling', recorders: [...recorders] });
      phone.say(take('24', 0, number));
    }
    const model = reportOf(phone.day());
    const said = model.takes.flatMap((line) =>
      line.onSome ? [[line.text, printedTake(line).words.join()]] : [],
    );
    expect(said).toEqual([
      ['24/2', '24/1 to 24/2 on Cart only'],
      ['24/4', 'on Cart only'],
      ['24/6', '24/6 to 24/7 on Cart only'],
    ]);
    expect(flowing(reportText(model))).toContain('24/6 to 24/7 on Cart only');
    // What the first two forms say, they say of each take.
    const earlier = reportOf(phone.day(), [], SECOND_FORM).takes;
    expect(earlier.filter(({ onSome }) => onSome)).toHaveLength(5);
    expect(earlier.every((line) => line.onSomeRun === undefined)).toBe(true);
  });

  test('each take says what the backup has of it', () => {
    const lines = reportText(reportOf(backedUp().phone.day())).split('\n');
    const under = (name: string) => lines[lines.findIndex((one) => one.startsWith(` ${name} `)) + 1]!.trim();
    expect(under('24/1')).toBe('Backup: 24T1.wav');
    // That nothing is on the backup stands there already.
    expect(under('24/2')).toBe('on Cart only');
    expect(reportHtml(reportOf(backedUp().phone.day()))).toContain('Backup: 24T1.wav');
  });

  test('the table has a line a take and recorder, and agrees', () => {
    const [head, ...rows]: string[][] = parse(reportCsv(reportOf(backedUp().phone.day())), {
      record_delimiter: '\r\n',
    });
    const cells = (row: string[]) => ['Recorder', 'Slate', 'Take'].map((title) => row[head!.indexOf(title)]);
    expect(rows.map((row) => cells(row).join(' '))).toEqual([
      'Cart 24 1',
      'Backup 24 1',
      'Cart 24 2',
      'Cart 24 3',
      'Backup 24 3',
      'Cart 24 4',
      'Cart 24 5',
      'Backup 24 5',
      ' 24A 1',
    ]);
  });

  test('takes that only the backup has are an open matter', () => {
    const { phone, takes } = backedUp();
    const said = rollRecorders(phone.day(), ['b'], { before: takes[4]! });
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    const { open, takes: lines } = reportOf(phone.day());
    expect(open.map(matterText)).toContain('Not on Cart, only on a backup: 24/5.');
    expect(lines[4]!.recorders).toMatchObject([{ id: 'b', name: 'Backup', roll: '' }]);
  });

  test('a correction after the report went out is a change of those takes', () => {
    const { phone, takes } = backedUp();
    const before = reportOf(phone.day());
    const said = correctRolling(phone.day(), takes[2]!, ['recorder']);
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    const changes = reportChanges(before, reportOf(phone.day()));
    expect(changes.filter(({ part }) => part === 'take')).toMatchObject([
      { what: '24/3', field: 'recorders', was: 'Cart, Backup', is: 'Cart' },
    ]);
  });

  test('each recorder has rolls of its own: a take is on the roll of the first that has it', () => {
    const { phone, takes } = backedUp();
    phone.say(
      { kind: 'roll-changed', roll: '7A', before: takes[0]! },
      { kind: 'roll-changed', roll: 'B1', recorder: 'b', before: takes[0]! },
      { kind: 'roll-changed', roll: 'B2', recorder: 'b', before: takes[4]! },
      { kind: 'recorders-rolling', recorders: ['b'], before: takes[4]! },
      { kind: 'day-described', fields: { filePattern: '{roll}_{slate}T{take}' } },
    );
    const model = reportOf(phone.day());
    expect(flowing(reportText(model))).toContain(
      'Recorder Cart, roll 7A, 4 of 5 takes, not 24/5 Recorder 2 Backup, roll B1 (24/1 to 24/3), roll B2 (24/5), 3 of 5 takes, not 24/2, 24/4',
    );
    expect(model.takes.map(({ roll }) => roll)).toEqual(['7A', '7A', '7A', '7A', 'B2', 'B2']);
    expect(model.takes.map(({ file }) => file)).toEqual([
      '7A_24T1.wav',
      '7A_24T2.wav',
      '7A_24T3.wav',
      '7A_24T4.wav',
      'B2_24T5.wav',
      '',
    ]);
    const [head, first, second]: string[][] = parse(reportCsv(model), { record_delimiter: '\r\n' });
    const cell = (row: string[], title: string) => row[head!.indexOf(title)];
    expect([cell(first!, 'Recorder'), cell(first!, 'Roll')]).toEqual(['Cart', '7A']);
    expect([cell(second!, 'Recorder'), cell(second!, 'Roll')]).toEqual(['Backup', 'B1']);
  });

  test('a day with one recorder names it as it always did', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } }, take('24', 0, 1));
    const model = reportOf(phone.day());
    expect(reportText(model)).toMatch(/^Recorder {5}Cart$/m);
    expect(reportCsv(model)).not.toContain('Cart');
  });
});

test('two recorders of one name, as two phones can give, are counted apart', () => {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  for (const part of ['b', 'c'])
    phone.say({ kind: 'part-described', part, fields: { type: 'recorder', name: 'Backup' } });
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b', 'c'] });
  phone.say(take('24', 0, 1));
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'c'] });
  phone.say(take('24', 0, 2));
  const { recorders } = reportOf(phone.day()).head;
  expect(recorders.map(({ has, without }) => [has, without])).toEqual([
    [2, []],
    [1, ['24/2']],
    [2, []],
  ]);
});
