import { beforeAll, describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { revisionOf } from '../../src/report/revision/revision.ts';
import { largeDay } from '../report/large-day.ts';
import { smallDay } from '../report/report-day.ts';
import { reportFonts as fonts } from '../report/report-fonts.ts';
import { fontsEmbedded, needPoppler, pageCount, pageSize, pageTexts } from './poppler.ts';

describe('the PDF as poppler reads it', () => {
  beforeAll(needPoppler, 300_000);

  // ISO 216 and ANSI/ASME Y14.1, portrait.
  test.each([
    ['a4', '595.28 x 841.89 pts (A4)'],
    ['letter', '612 x 792 pts (letter)'],
  ] as const)('has portrait pages of %s', (paper, size) => {
    expect(pageSize(reportPdf(reportOf(smallDay().phone.day()), { fonts, paper }).bytes)).toBe(size);
  });

  test('has as many pages as it says, each numbered', () => {
    const { bytes, pages } = reportPdf(reportOf(largeDay({ takes: 40, tracks: 16 })), { fonts });
    expect(pageCount(bytes)).toBe(pages);
    const texts = pageTexts(bytes);
    expect(texts.map((text, at) => text.includes(`page ${at + 1} of ${pages}`))).toEqual(
      texts.map(() => true),
    );
  });

  test('holds its fonts', () => {
    expect(fontsEmbedded(reportPdf(reportOf(smallDay().phone.day()), { fonts }).bytes)).toEqual([true, true]);
  });

  test('has names in Latin with diacritics, Greek and Cyrillic', () => {
    const { phone } = smallDay();
    const part = 'Łőřęš Ğüñ Ởẽ · Ωμέγα · Щука ѓ';
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part } });
    const { bytes, missing } = reportPdf(reportOf(phone.day()), { fonts });
    expect(missing).toEqual([]);
    expect(pageTexts(bytes).join('').normalize('NFC')).toContain(`3 ${part}`);
  });

  test('says which letters it has not', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: '音' } });
    const text = pageTexts(reportPdf(reportOf(phone.day()), { fonts }).bytes).join('');
    expect(text).toContain('These pages show ? for U+97F3.');
    expect(text).toContain('3 ?');
  });

  test('of a revision says at its head what changed', () => {
    const { phone, first } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    const now = reportOf(phone.day());
    const { bytes } = reportPdf(now, { fonts, revision: revisionOf(now, { letter: 'A', model: sent }) });
    const text = pageTexts(bytes).join('');
    expect(text).toContain('Sound report, revision B');
    expect(text).toContain('24A/1: status was empty, is circled.');
  });
});
