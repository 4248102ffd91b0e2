import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { changeText } from '../../src/report/revision/change.ts';
import { reportChanges } from '../../src/report/revision/report-changes.ts';
import { take } from '../day/say.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { smallDay } from './report-day.ts';
import { reportFonts } from './report-fonts.ts';

/** The small day on a recorder that writes a file for each track: 4 + 4 + 4 + 3 + 0 + 3 of them, counted by hand. */
function monoDay() {
  const day = smallDay();
  day.phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
  return day;
}

const columns = ['called', 'file'] as const;

describe('the report of a day of mono files', () => {
  beforeAll(needPoppler, 300_000);

  test('counts and names them file by file in the text', () => {
    const text = reportText(reportOf(monoDay().phone.day()));
    expect(text).toContain('Files        one mono file a track\n');
    expect(text).toContain('Takes      6, 2 circled, 18 files\n');
    expect(text).toContain(
      [
        ' 24A/1      4 files  01:00:00:00  01:00:10:00  00:00:10:00',
        '            24AT1_1, _2, _3, _4.wav',
        '            1 Mix · 2 Boom · 3 Ines · 4 Dora',
        '(24A/2)     4 files  01:00:40:00  01:00:50:00  00:00:10:00  circled',
        '            24AT2_1, _2, _3, _4.wav',
      ].join('\n'),
    );
    expect(text).toContain(' 24C/1 MOS  no file  MOS\n');
    expect(text).toContain('24BT1FS_1, _2, _3, _4.wav\n');
  });

  // 100 seconds with sound at 48 kHz and 24 bit are 14.4 MB a track; five takes with sound; by hand.
  test('counts what the recorder writes, where it is known which tracks were armed, and says so', () => {
    const { phone, wild } = monoDay();
    expect(reportText(reportOf(phone.day()))).toContain('Sound      47.5 MB on tracks in use\n');
    phone.say({ kind: 'card-described', card: 'a', fields: { name: 'A', bytes: 64e9, tracks: 6 } });
    const text = reportText(reportOf(phone.day()));
    expect(text).toContain('Takes      6, 2 circled, 18 files named, 30 written for armed tracks\n');
    expect(text).toContain('Sound      86.4 MB on armed tracks\n');
    // Out before the wild track of a minute: 40 s × 6 tracks armed, 60 s × 3 in use.
    const outAtMs = phone.facts.find(({ id }) => id === wild)!.at;
    phone.say({ kind: 'card-described', card: 'a', fields: { outAtMs } });
    const partly = reportText(reportOf(phone.day())).replaceAll(/\n +/g, ' ');
    expect(partly).toContain('Sound      60.5 MB on armed tracks where known, else on tracks in use\n');
    expect(partly).toContain('18 files named, 27 written for armed tracks\n');
  });

  test('counts one file a take of poly files, whatever is armed', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'card-described', card: 'a', fields: { name: 'A', bytes: 64e9, tracks: 6 } });
    expect(reportText(reportOf(phone.day()))).toContain('Takes      6, 2 circled, 5 files\n');
  });

  test('counts and names them file by file on the web page and on the pages', () => {
    const model = reportOf(monoDay().phone.day());
    const html = reportHtml(model);
    const pages = pageTexts(reportPdf(model, { fonts: reportFonts }).bytes).join('\n');
    for (const said of [
      '6, 2 circled, 18 files',
      '24AT1_1, _2, _3, _4.wav',
      'WT1_1, _2, _3.wav',
      '3 files',
    ]) {
      expect(html).toContain(said);
      expect(pages).toContain(said);
    }
    expect(html).not.toContain('24AT1.wav');
    expect(pages).not.toContain('24AT1.wav');
  });

  test('names every file in the table of takes, and in the table of tracks each at its track', () => {
    const model = reportOf(monoDay().phone.day());
    const [, first, ...others]: string[][] = parse(reportCsv(model, { columns }));
    expect(first).toEqual(['24A/1', '24AT1_1.wav; 24AT1_2.wav; 24AT1_3.wav; 24AT1_4.wav']);
    expect(others[3]).toEqual(['24C/1 MOS', '']);
    const tracks: string[][] = parse(
      reportCsv(model, { lines: 'track', columns: [...columns, 'track', 'name'] }),
    );
    expect(tracks.filter(([called]) => called === '24B/1')).toEqual([
      ['24B/1', '24BT1_1.wav', '1', 'Mix'],
      ['24B/1', '24BT1_2.wav', '2', 'Boom'],
      ['24B/1', '24BT1_3.wav', '3', 'Tomas, Dora'],
    ]);
  });

  test('names them in what is not settled, and in a revision', () => {
    const { phone, first, second } = monoDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { file: '24AT2.wav' } });
    const now = reportOf(phone.day());
    expect(now.open.map(matterText)).toEqual(['24AT2_1.wav and 3 more are files of 24A/1, 24A/2.']);
    expect(now.open[0]!.takes).toEqual([first, second]);
    expect(reportChanges(sent, now).map(changeText)).toContain(
      '24A/1: files was 24AT1_1, _2, _3, _4.wav, is 24AT2_1, _2, _3, _4.wav.',
    );
  });

  test('tells a file that came with a track', () => {
    const { phone, wild } = monoDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr4'] }], before: wild });
    expect(reportChanges(sent, reportOf(phone.day())).map(changeText)).toContain(
      'WT1: files was WT1_1, _2, _3.wav, is WT1_1, _2, _3, _4.wav.',
    );
  });

  test('tells that the layout changed: in the head, and in every take with sound', () => {
    const { phone } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    const found = reportChanges(sent, reportOf(phone.day()));
    expect(found.map(changeText).slice(0, 2)).toEqual([
      'Files: was one poly file a take, is one mono file a track.',
      '24A/1: file was 24AT1.wav, is 24AT1_1, _2, _3, _4.wav.',
    ]);
    expect(found.flatMap(({ takes }) => takes)).toHaveLength(5);
  });
});

describe('one name for the files of two takes', () => {
  test('is told also where it differs in case alone, as many disks do not', () => {
    const { phone, first, second } = smallDay();
    phone.say({ kind: 'take-described', take: first, fields: { file: 'Take.WAV' } });
    phone.say({ kind: 'take-described', take: second, fields: { file: 'tAKE.wav' } });
    expect(reportOf(phone.day()).open.map(matterText)).toEqual(['Take.WAV is the file of 24A/1, 24A/2.']);
  });

  test('is told also where an accent is written in two ways, which look alike', () => {
    const { phone, first, second } = smallDay();
    phone.say({ kind: 'take-described', take: first, fields: { file: 'Sc\u00e8ne.wav' } });
    phone.say({ kind: 'take-described', take: second, fields: { file: 'Sce\u0300ne.wav' } });
    expect(reportOf(phone.day()).open).toHaveLength(1);
  });

  test('is told of mono files that are alike while their takes are not named alike', () => {
    const { phone, first, second } = monoDay();
    phone.say({ kind: 'take-described', take: first, fields: { file: '24AT2_2.wav' } });
    phone.say({
      kind: 'inputs-sent',
      routes: ['in1', 'aes1', 'aes2'].map((input) => ({ input, tracks: [] })),
      before: first,
    });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'in1', tracks: ['tr2', 'tr4'] }], before: second });
    phone.say({ kind: 'part-described', part: 'tr1', fields: { mix: false } });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'in1', tracks: ['tr5'] }], before: first });
    expect(
      reportOf(phone.day())
        .takes.slice(0, 2)
        .map(({ files }) => files.map(({ name }) => name)),
    ).toEqual([['24AT2_2.wav'], ['24AT2_2.wav', '24AT2_4.wav']]);
    expect(reportOf(phone.day()).open.map(matterText)).toContain('24AT2_2.wav is a file of 24A/1, 24A/2.');
  });

  test('is nothing to tell of takes whose names differ', () => {
    expect(reportOf(monoDay().phone.day()).open).toEqual([]);
    const { phone } = smallDay();
    phone.say(take('24', 1, 3));
    expect(reportOf(phone.day()).open).toEqual([]);
  });
});
