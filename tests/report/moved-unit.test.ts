import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { describePart } from '../../src/commands/day/describe.ts';
import { SECOND_FORM } from '../../src/report/form.ts';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { csvColumnsFor } from '../../src/report/formats/csv-columns.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportMailto } from '../../src/report/formats/mailto.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { dayPictures } from '../../src/report/printed/day-picture.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { changeText } from '../../src/report/revision/change.ts';
import { reportChanges } from '../../src/report/revision/report-changes.ts';
import { speaker, take } from '../day/say.ts';
import { BAG, CART } from '../day/two-recorders.ts';
import { drawnPages } from './drawn-pages.ts';
import { movedDay } from './printed-days.ts';
import { reportFonts as fonts } from './report-fonts.ts';

// What is printed was read when it was kept, as in `printed.test.ts`; `--update` keeps what it is now.

const flowing = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('a day whose unit moves from cart to bag and back, with a backup', () => {
  const model = reportOf(movedDay().phone.day());
  const text = reportText(model);

  test('is printed as text, as a page, as tables and on pages as it was last read', async () => {
    await expect(text).toMatchFileSnapshot('printed/moved.txt');
    await expect(reportHtml(model)).toMatchFileSnapshot('printed/moved.html');
    await expect(reportCsv(model)).toMatchFileSnapshot('printed/moved-takes.csv');
    await expect(reportCsv(model, { lines: 'track', columns: csvColumnsFor('track') })).toMatchFileSnapshot(
      'printed/moved-all-columns-tracks.csv',
    );
    await expect(drawnPages(reportPdf(model, { fonts }).bytes)).toMatchFileSnapshot('pages/moved.txt');
  });

  test('says in its first lines that the recorder changes, and that rates are not the same', () => {
    expect(flowing(text)).toMatch(
      /^SOUND REPORT CAUTION: The recorder changes during the day: Cart to WT1; Bag from 25\/1 to 25\/2; Cart from 26\/1. CAUTION: The timecode rate is not the same on all recorders. Cart: 25 fps. Bag: 24 fps. Backup: 25 fps. Production/,
    );
    expect(reportHtml(model)).toContain('The recorder changes during the day: Cart to WT1');
    expect(reportMailto(model, [], 'x').href).toContain(encodeURIComponent('The recorder changes'));
  });

  test('names each file by the pattern of its recorder, with its roll and its own running number', () => {
    const files = model.takes.map(({ recorders }) =>
      recorders.map(({ name, roll, file }) => [name, roll, file]),
    );
    expect(files[0]).toEqual([['Cart', '7A', '24AT1.wav']]);
    expect(files[6]).toEqual([['Bag', 'C1', 'C1-001.wav']]);
    expect(files[8]).toEqual([
      ['Cart', '7A', '26T1.wav'],
      ['Bag', 'C1', 'C1-003.wav'],
      ['Backup', 'B1', '26T1.wav'],
    ]);
  });

  test('says at a take which recorders have it where one missed it; the first two forms said it of all', () => {
    const said = (form?: number) =>
      reportOf(movedDay().phone.day(), [], form).takes.map(({ text: take, onSome }) => [take, onSome]);
    expect(said()[0]).toEqual(['24A/1', false]);
    expect(said()[1]).toEqual(['24A/2', true]);
    expect(said(SECOND_FORM)[0]).toEqual(['24A/1', true]);
  });

  test('prints the tracks of each recorder where they change, and those of a backup once', () => {
    const lines = text.split('\n').map((line) => line.trim());
    expect(lines.filter((line) => /^(Bag|Cart|Backup|Cart and Backup): (1|as) /.test(line))).toEqual([
      'Cart: 1 Mix · 2 Boom · 3 Ines · 4 Dora',
      'Cart and Backup: as 24A/1 but for track 3: Tomas',
      'Cart and Backup: 1 Mix · 2 Boom · 3 Tomas, Dora (ganged)',
      'Bag: 1 Mix · 3 Tomas',
      'Bag: as 25/1 but for track 3: Ines',
      'Cart and Backup: as 24B/1 but for track 3: Ines, Dora',
    ]);
  });

  test('has a table with a line a take and recorder, each with its file, roll, rate and tracks', () => {
    const records: string[][] = parse(reportCsv(model), { record_delimiter: '\r\n' });
    const [head, ...rows] = records;
    const cells = (row: string[], ...titles: string[]) => titles.map((title) => row[head!.indexOf(title)]);
    expect(rows.length).toBe(7 + 4 + 5 + 1);
    const last = rows.filter((row) => cells(row, 'Slate', 'Take').join('/') === '26/1');
    expect(
      last.map((row) => cells(row, 'Recorder', 'Roll', 'File', 'Start', 'Timecode rate', 'Track 3')),
    ).toEqual([
      ['Cart', '7A', '26T1.wav', '01:06:00:00', '25 fps', 'Ines, Dora (ganged)'],
      // Nobody wrote down what a recorder at another rate showed.
      ['Bag', 'C1', 'C1-003.wav', '', '24 fps', 'Ines'],
      ['Backup', 'B1', '26T1.wav', '01:06:00:00', '25 fps', 'Ines, Dora (ganged)'],
    ]);
  });

  test('a note on a track names its recorder, and is in no line of another', () => {
    expect(text).toContain('- track 3 of Bag: rustle');
    const { phone, eighth } = movedDay();
    phone.say({ kind: 'note-added', take: eighth, track: 'bag-tr3', text: 'hum' });
    const records: string[][] = parse(reportCsv(reportOf(phone.day())), { record_delimiter: '\r\n' });
    const noted = records.filter((row) => row.some((cell) => cell.includes('hum')));
    expect(noted.map((row) => row[1])).toEqual(['Bag']);
  });

  test('draws a picture for each list of tracks, of the takes that it has', () => {
    expect(dayPictures(model).map(({ on, columns }) => [on, columns.map((one) => one.text)])).toEqual([
      [
        ['Cart', 'Backup'],
        ['24A/1', '24A/2', '24B/1 FS', '24B/1', '24C/1 MOS', 'WT1', '26/1', '26/2'],
      ],
      [['Bag'], ['25/1', '25/2', '26/1', '26/2']],
    ]);
  });

  test('a correction after it went out is a change of those takes, and of their recorder alone', () => {
    const { phone, eighth } = movedDay();
    const before = reportOf(phone.day());
    phone.say({ kind: 'recorders-rolling', recorders: [CART, 'b'], before: eighth });
    phone.say({ kind: 'recorder-set', recorder: BAG, settings: { filePattern: '{slate}-{take}' } });
    const said = reportChanges(before, reportOf(phone.day())).filter(({ part }) => part === 'take');
    expect(said.map(changeText)).toEqual([
      '26/2: recorders was Cart, Bag (roll C1), Backup (roll B1), is Cart, Backup (roll B1).',
    ]);
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Inès' } });
    const renamed = reportChanges(before, reportOf(phone.day())).filter(({ part }) => part === 'take');
    expect(renamed.map(changeText)).toContain('25/2, 26/1: track 3 of Bag was Ines, is Inès.');
  });

  test('a recorder called otherwise is called so in every place', () => {
    const { phone } = movedDay();
    const said = describePart(phone.day(), BAG, { name: 'Car bag' });
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    const again = reportText(reportOf(phone.day()));
    expect(again).toContain('Car bag: as 25/1 but for track 3: Ines');
    expect(again).not.toMatch(/\bBag\b/);
  });
});

/** A cart and a bag that roll together at every take, with what is said of them. */
function together(...said: Parameters<ReturnType<typeof speaker>['say']>) {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Bag' } });
  phone.say({ kind: 'recorders-rolling', recorders: [CART, 'b'] });
  if (said.length > 0) phone.say(...said);
  return phone;
}

describe('files of one name on two recorders', () => {
  const head = (...said: Parameters<typeof together>): string => {
    const phone = together(...said);
    phone.say(take('24', 0, 1));
    return flowing(reportText(reportOf(phone.day())));
  };

  test('are said, with what tells them apart: the roll, or else the recorder only', () => {
    expect(head()).toContain('File names the same on Cart and Bag, told apart by the recorder only');
    expect(
      head({ kind: 'roll-changed', roll: '1' }, { kind: 'roll-changed', roll: '2', recorder: 'b' }),
    ).toContain('File names the same on Cart and Bag, told apart by the roll');
    expect(head({ kind: 'recorder-set', recorder: 'b', settings: { filePattern: 'b{take}' } })).not.toContain(
      'File names',
    );
  });

  test('of different takes are an open matter', () => {
    const phone = together({ kind: 'day-described', fields: { filePattern: '{count:3}' } });
    phone.say({ kind: 'recorders-rolling', recorders: ['b'] });
    phone.say(take('24', 0, 1));
    phone.say({ kind: 'recorders-rolling', recorders: [CART, 'b'] });
    for (const number of [2, 3]) phone.say(take('24', 0, number));
    const open = reportOf(phone.day()).open.map(matterText);
    expect(open).toContain('001.wav is 24/1 on Bag and 24/2 on Cart, and 1 more name is on both.');
  });
});

describe('a roll that nobody entered', () => {
  test('of one recorder is an open matter where the other has one', () => {
    const phone = together({ kind: 'roll-changed', roll: '7A' });
    for (const number of [1, 2]) phone.say(take('24', 0, number));
    expect(reportOf(phone.day()).open.map(matterText)).toContain('No roll entered for Bag: 24/1, 24/2.');
  });

  test('of any recorder is said once, with what else the head lacks', () => {
    const phone = together();
    phone.say(take('24', 0, 1));
    const codes = reportOf(phone.day()).open.map(({ code }) => code);
    expect(codes).toEqual(['head-lacks']);
  });
});

test('what only the bag has is no matter of a backup when the bag has tracks of its own', () => {
  const { open } = reportOf(movedDay().phone.day());
  expect(open.map(({ code }) => code)).not.toContain('on-backup-only');
});
