import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { speaker, take } from '../day/say.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { reportFonts } from './report-fonts.ts';

/** Two takes at 25 fps, a setup without sound, two at 23.976, and one at 25 again. */
function mixedDay() {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { production: 'Salt Road', timecodeRate: '25' } });
  phone.say(take('24', 0, 1, { start: { frames: 900_012, rate: '25' } }));
  const second = phone.id(take('24', 0, 2, { start: { frames: 905_024, rate: '25' } }));
  phone.say({ kind: 'recorder-set', settings: { timecodeRate: '23.976' } });
  phone.say(take('24', 1, 1, { kind: 'mos', start: null, length: null }));
  phone.say(take('24', 2, 1, { start: { frames: 864_000, rate: '23.976' } }));
  phone.say(take('24', 2, 2, { start: { frames: 870_023, rate: '23.976' } }));
  phone.say({ kind: 'recorder-set', settings: { timecodeRate: '25' } });
  phone.say(take('24', 3, 1, { start: { frames: 990_000, rate: '25' } }));
  return { phone, second };
}

const CAUTION =
  'The timecode rate changes during the day: 25 fps to 24/2; 23.976 fps from 24B/1 to 24B/2; 25 fps from 24C/1.';

const flowing = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('a day whose timecode rate changes', () => {
  beforeAll(needPoppler, 300_000);

  test('says so in the first lines of the text, before anything else of the head', () => {
    const text = reportText(reportOf(mixedDay().phone.day()));
    expect(flowing(text).startsWith(`SOUND REPORT CAUTION: ${CAUTION} Production Salt Road`)).toBe(true);
    expect(text.split('\n').every((line) => line.length <= 72)).toBe(true);
  });

  test('every take with sound says its own rate, with digits that exist at it', () => {
    const lines = reportText(reportOf(mixedDay().phone.day())).split('\n');
    const line = (name: string) => flowing(lines.find((one) => one.trim().startsWith(`${name} `))!).trim();
    expect(line('24/1')).toBe('24/1 24T1.wav 10:00:00:12 10:00:10:12 00:00:10:00 25 fps');
    expect(line('24/2')).toBe('24/2 24T2.wav 10:03:20:24 10:03:30:24 00:00:10:00 25 fps');
    expect(line('24B/1')).toBe('24B/1 24BT1.wav 10:00:00:00 10:00:10:00 00:00:10:00 23.976 fps');
    expect(line('24B/2')).toBe('24B/2 24BT2.wav 10:04:10:23 10:04:20:23 00:00:10:00 23.976 fps');
    expect(line('24C/1')).toBe('24C/1 24CT1.wav 11:00:00:00 11:00:10:00 00:00:10:00 25 fps');
    expect(line('24A/1 MOS')).not.toContain('fps');
  });

  test('the table has a column of rates without being asked, and agrees with the text', () => {
    const records: string[][] = parse(reportCsv(reportOf(mixedDay().phone.day())), {
      record_delimiter: '\r\n',
    });
    const [head, ...rows] = records;
    const at = head!.indexOf('Timecode rate');
    expect(at).toBeGreaterThan(0);
    expect(rows.map((row) => row[at])).toEqual([
      '25 fps',
      '25 fps',
      '23.976 fps',
      '23.976 fps',
      '23.976 fps',
      '25 fps',
    ]);
  });

  test('the page and the printed pages say the same caution', () => {
    const model = reportOf(mixedDay().phone.day());
    expect(reportHtml(model)).toContain(CAUTION);
    const [first] = pageTexts(reportPdf(model, { fonts: reportFonts }).bytes);
    const page = first!.replaceAll(/\s+/g, '');
    expect(page).toContain(`Caution${CAUTION}`.replaceAll(' ', ''));
    expect(page.indexOf('Caution')).toBeLessThan(page.indexOf('Samplerate'));
  });

  test('a change placed before an earlier take moves where it begins', () => {
    const { phone, second } = mixedDay();
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '23.976' }, before: second });
    const text = flowing(reportText(reportOf(phone.day())));
    expect(text).toContain('25 fps to 24/1; 23.976 fps from 24/2 to 24B/2; 25 fps from 24C/1');
    expect(text).toContain('10:03:20:23');
    expect(text).not.toContain('10:03:20:24');
  });

  test('a day at one rate has no caution, no column and no word of it on a take', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '23.976' } });
    const model = reportOf(phone.day());
    expect(reportText(model)).not.toContain('CAUTION');
    expect(reportText(model)).toContain('Timecode     25 fps');
    expect(reportCsv(model)).not.toContain('fps');
  });

  test('changing sample rates and bit depths are told too, and of a take', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    phone.say({ kind: 'recorder-set', settings: { sampleRate: 96_000, bitDepth: '32f' } });
    phone.say(take('24', 0, 2));
    const text = flowing(reportText(reportOf(phone.day())));
    expect(text).toContain(
      'CAUTION: The sample rate changes during the day: 48 kHz to 24/1; 96 kHz from 24/2.',
    );
    expect(text).toContain('Bit depth 24 bit to 24/1; 32 bit float from 24/2');
    expect(text).toContain('00:00:10:00 96 kHz, 32 bit float');
  });
});
