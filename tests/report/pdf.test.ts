import { describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { revisionOf } from '../../src/report/revision/revision.ts';
import { speaker } from '../day/say.ts';
import { drawnPages } from './drawn-pages.ts';
import { largeDay } from './large-day.ts';
import { smallDay } from './report-day.ts';
import { reportFonts as fonts } from './report-fonts.ts';

const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

/** How far down a page its text goes, above the foot. */
const lowest = (page: string): number =>
  Math.max(
    ...Array.from(page.matchAll(/^[\d.]+,([\d.]+) /gm), ([, y]) => Number(y)).filter((y) => y < FOOT_AT),
  );
const FOOT_AT = 810;
const HALF = 420;

describe('the PDF', () => {
  test('of one day is the same bytes every time', () => {
    const [one, two] = [1, 2].map(() => reportPdf(reportOf(smallDay().phone.day()), { fonts }).bytes);
    expect(Buffer.from(one!).equals(Buffer.from(two!))).toBe(true);
  });

  test('carries no date but the one of the day', () => {
    const text = latin1(reportPdf(reportOf(smallDay().phone.day()), { fonts }).bytes);
    expect(text.match(/D:\d{14}/g)).toEqual(['D:20261007000000']);
  });

  test('of a changed day has another id', () => {
    const id = (bytes: Uint8Array) => /\/ID \[ <([0-9A-F]{32})>/.exec(latin1(bytes))![1];
    const { phone, first } = smallDay();
    const before = id(reportPdf(reportOf(phone.day()), { fonts }).bytes);
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    expect(id(reportPdf(reportOf(phone.day()), { fonts }).bytes)).not.toBe(before);
  });

  test('names the characters that its font has not instead of printing boxes', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Łucja Ωμέγα Заря 音 🎬' } });
    expect(reportPdf(reportOf(phone.day()), { fonts }).missing).toEqual(['音', '🎬']);
  });

  test('of a day with a name, a date or a title that means harm is whole', () => {
    const phone = speaker();
    phone.say({
      kind: 'day-described',
      fields: {
        production: '../../x) endobj (',
        label: '\u202e<b>',
        date: '9999-99-99',
        remarks: 'x'.repeat(4000),
      },
    });
    const { bytes, pages } = reportPdf(reportOf(phone.day()), { fonts, signature: '(\\)' });
    expect(pages).toBeGreaterThan(0);
    expect(latin1(bytes).trimEnd().endsWith('%%EOF')).toBe(true);
  });

  test('of 200 takes on 16 tracks is smaller than 400 kB', () => {
    const { bytes } = reportPdf(reportOf(largeDay({ takes: 200, tracks: 16 })), { fonts });
    expect(bytes.length).toBeLessThan(400_000);
  }, 30_000);

  test('of 600 takes on 64 tracks with long notes is set to the end, and no page is nearly empty', () => {
    const model = reportOf(largeDay({ takes: 600, tracks: 64, changeEvery: 40, note: 'wind '.repeat(100) }));
    const { bytes, pages } = reportPdf(model, { fonts });
    const drawn = drawnPages(bytes)
      .split(/^page \d+ of .*$/m)
      .slice(1);
    expect(drawn).toHaveLength(pages);
    const listed = drawn.flatMap((page) => page.match(/(?<=: )\d+[A-Z]*\/\d+$/gm) ?? []);
    const names = new Set(model.takes.map(({ text }) => text));
    expect(listed.filter((text) => names.has(text))).toEqual(model.takes.map(({ text }) => text));
    for (const [at, page] of drawn.entries()) expect(lowest(page), `page ${at + 1}`).toBeGreaterThan(HALF);
  }, 120_000);

  test('refuses a face that is not a font', () => {
    expect(() =>
      reportPdf(reportOf(speaker().day()), { fonts: { ...fonts, bold: new Uint8Array(40) } }),
    ).toThrow();
  });

  test('of a revision differs from the first report of the same day', () => {
    const { phone, first } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    const now = reportOf(phone.day());
    const revision = revisionOf(now, { letter: 'A', model: sent });
    const [plain, revised] = [reportPdf(now, { fonts }), reportPdf(now, { fonts, revision })];
    expect(revised.bytes.length).toBeGreaterThan(plain.bytes.length);
  });
});
