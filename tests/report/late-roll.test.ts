import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../src/commands/command.ts';
import { loadRoll } from '../../src/commands/line/roll-recorders.ts';
import type { Day } from '../../src/day/model.ts';
import { rollOfTake, rollOn } from '../../src/day/recorders/rolling.ts';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { unguard } from '../../src/report/formats/csv-field.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { speaker, take } from '../day/say.ts';

/** Cart all day, a backup from the second take to the fourth; nobody has named a roll yet. */
function fourTakes() {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } });
  const takes = [phone.id(take('24', 0, 1))];
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b'] });
  for (const number of [2, 3, 4]) takes.push(phone.id(take('24', 0, number)));
  const run = (command: (day: Day) => CommandResult): void => {
    const said = command(phone.day());
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
  };
  /** Named late; the answer to whether it was in from the first take on is where it is put. */
  const name = (recorder: string, roll: string, isFromFirst: boolean): void =>
    run((day) => loadRoll(day, recorder, roll, { before: isFromFirst ? takes[0] : undefined }));
  return { phone, takes, name };
}

const rollsOf = (day: Day, takes: readonly string[]) =>
  takes.map((id) => [rollOn(day, id, 'recorder'), rollOn(day, id, 'b')]);

/** Each line of the table: the take, its recorder and its roll. */
function table(day: Day): string[] {
  const records: string[][] = parse(
    reportCsv(reportOf(day), { lines: 'take', columns: ['called', 'recorder', 'roll'] }),
  );
  return records.slice(1).map((cells) => cells.map(unguard).join(' '));
}

const flowing = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('a roll that is first named late, of one of several recorders', () => {
  test('holds for the takes so far on that recorder, and says nothing of the others', () => {
    const { phone, takes, name } = fourTakes();
    name('b', 'B1', true);
    expect(rollsOf(phone.day(), takes)).toEqual(takes.map(() => ['', 'B1']));
    expect(takes.map((id) => rollOfTake(phone.day(), id))).toEqual(['', '', '', '']);
    name('recorder', '7A', true);
    phone.say(take('24', 0, 5));
    expect(rollsOf(phone.day(), takes)).toEqual(takes.map(() => ['7A', 'B1']));
  });

  test('or from here on only, and then the takes so far have none', () => {
    const { phone, takes, name } = fourTakes();
    name('b', 'B1', false);
    name('recorder', '7A', true);
    const fifth = phone.id(take('24', 0, 5));
    expect(rollsOf(phone.day(), [...takes, fifth])).toEqual([...takes.map(() => ['7A', '']), ['7A', 'B1']]);
  });

  test('stands in text, page and table at every take that the recorder has, and at no other', () => {
    const { phone, name } = fourTakes();
    name('b', 'B1', true);
    name('recorder', '7A', true);
    const model = reportOf(phone.day());
    const head = 'Backup, roll B1, 3 of 4 takes, not 24/1';
    for (const words of [reportText(model), reportHtml(model)]) {
      expect(flowing(words)).toContain('Cart, roll 7A, all 4 takes');
      expect(flowing(words)).toContain(head);
      expect(words).not.toContain('no roll');
      for (const number of [2, 3, 4]) expect(words).toContain(`Backup, roll B1: 24T${number}.wav`);
      expect(words).not.toContain('Backup, roll B1: 24T1.wav');
    }
    expect(table(phone.day())).toEqual([
      '24/1 Cart 7A',
      ...[2, 3, 4].flatMap((number) => [`24/${number} Cart 7A`, `24/${number} Backup B1`]),
    ]);
  });

  test('from here on only, text, page and table agree on the takes without one', () => {
    const { phone, name } = fourTakes();
    name('recorder', '7A', true);
    name('b', 'B1', false);
    phone.say(take('24', 0, 5));
    const model = reportOf(phone.day());
    for (const words of [reportText(model), reportHtml(model)]) {
      expect(flowing(words)).toContain(
        'Backup, no roll (24/2 to 24/4), roll B1 (24/5), 4 of 5 takes, not 24/1',
      );
      expect(words).toContain('Backup: 24T4.wav');
      expect(words).toContain('Backup, roll B1: 24T5.wav');
    }
    expect(table(phone.day()).slice(-4)).toEqual([
      '24/4 Cart 7A',
      '24/4 Backup no roll',
      '24/5 Cart 7A',
      '24/5 Backup B1',
    ]);
  });
});
