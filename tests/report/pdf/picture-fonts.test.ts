import { beforeAll, describe, expect, test } from 'vitest';
import { reportOf } from '../../../src/report/model.ts';
import { reportPdf } from '../../../src/report/pdf/report-pdf.ts';
import { needPoppler, pageTexts } from '../../oracle/poppler.ts';
import { largeDay } from '../large-day.ts';
import { smallDay } from '../report-day.ts';
import { reportFonts as fonts } from '../report-fonts.ts';
import { squareLetters } from '../square-letters.ts';

/** The pages of a day on which somebody has this name. */
function pagesWith(part: string, letters = squareLetters) {
  const { phone } = smallDay();
  phone.say({ kind: 'voice-described', voice: 'ines', fields: { part } });
  return reportPdf(reportOf(phone.day()), { fonts, letters });
}

/** Without the marks of direction that poppler adds. */
const read = (bytes: Uint8Array): string =>
  pageTexts(bytes)
    .join('\n')
    .replaceAll(/[\u202a-\u202e]/g, '');

describe('pages with names that their fonts lack', () => {
  beforeAll(needPoppler, 300_000);

  test('have the letters of the system as text', () => {
    const { bytes, missing } = pagesWith('木村陽子');
    expect(missing).toEqual([]);
    expect(read(bytes)).toContain('3 木村陽子');
    expect(read(pagesWith('נועה').bytes)).toContain('3 נועה');
  });

  test('say what neither has', () => {
    const { bytes, missing } = pagesWith('木 Ж ʘ प');
    expect(missing).toEqual(['ʘ', 'प']);
    expect(read(bytes)).toContain('These pages show ? for U+0298 U+092A. The web page has them.');
    expect(read(bytes)).toContain('3 木 Ж ? ?');
  });

  test('have a name longer than a font has codes for', () => {
    const long = '木村'.repeat(150);
    expect(read(pagesWith(long).bytes).replaceAll(/\s/g, '')).toContain(long);
  });

  test('are the same bytes every time, and draw a name once however often it is there', () => {
    const [one, two] = [1, 2].map(() => pagesWith('木村').bytes);
    expect(Buffer.from(one!).equals(Buffer.from(two!))).toBe(true);
    let drawn = 0;
    const counting = {
      ...squareLetters,
      picture: (run: Parameters<typeof squareLetters.picture>[0]) => {
        drawn += 1;
        return squareLetters.picture(run);
      },
    };
    const model = reportOf(largeDay({ takes: 40, tracks: 8, names: ['', '木村', '陽子'] }));
    reportPdf(model, { fonts, letters: counting });
    // Each in a take as it was and in bold where it changed, and in the picture of the day.
    expect(drawn).toBeLessThanOrEqual(4);
    expect(drawn).toBeGreaterThan(1);
  });
});
