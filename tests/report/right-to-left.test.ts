import { describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { mailDraft } from '../../src/report/formats/eml.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportMailto } from '../../src/report/formats/mailto.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { isolated } from '../../src/report/isolated.ts';
import { reportOf } from '../../src/report/model.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { textWidth, wrapText } from '../../src/report/printed/text-width.ts';
import { revisionOf } from '../../src/report/revision/revision.ts';
import { unwrap } from '../upkeep/unwrap.ts';
import { smallDay } from './report-day.ts';

// Names in Hebrew letters, which are written from right to left (Unicode Standard Annex 9).
const NOA = '\u05e0\u05d5\u05e2\u05d4';
const AMIR = '\u05d0\u05de\u05d9\u05e8';
const alone = (name: string): string => `\u2068${name}\u2069`;

function hebrewDay() {
  const small = smallDay();
  small.phone.say(
    { kind: 'voice-described', voice: 'ines', fields: { part: NOA } },
    { kind: 'voice-described', voice: 'dora', fields: { part: AMIR } },
  );
  return small;
}

/** What stands outside of isolates. */
const outside = (text: string): string => text.replaceAll(/\u2068[^\u2069\n]*\u2069/g, '');

describe('a name written from right to left keeps the number of its track', () => {
  test('in the text and in the mail', () => {
    const model = reportOf(hebrewDay().phone.day());
    const text = reportText(model);
    expect(text).toContain(`3 ${alone(NOA)} · 4 ${alone(AMIR)}`);
    expect(text).toContain(`track 3: rustle`);
    expect(outside(text)).not.toMatch(/[\u0590-\u08ff]/);
    const link = reportMailto(model, [], 'report', { budget: 100_000 });
    expect(decodeURIComponent(link.href)).toContain(`3 ${alone(NOA)} · 4 ${alone(AMIR)}`);
  });

  test('on the web page, each in an element of its own', () => {
    const html = reportHtml(reportOf(hebrewDay().phone.day()));
    expect(html).toContain(`<li><bdi>3 <bdi>${NOA}</bdi></bdi></li>`);
    expect(html).not.toMatch(/[\u2068\u2069]/);
  });

  test('in the table without a character more', () => {
    expect(reportCsv(reportOf(hebrewDay().phone.day()))).not.toMatch(/[\u2068\u2069]/);
    const { phone } = smallDay();
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: `=${NOA}()` } });
    expect(reportCsv(reportOf(phone.day()))).toContain(`"'=${NOA}()"`);
  });

  test('in what is not settled and in what changed', () => {
    expect(matterText({ code: 'voice-unrecorded', name: NOA, names: ['24A/1', '24A/2'] })).toBe(
      `${alone(NOA)} was on no track: 24A/1, 24A/2.`,
    );
    const before = reportOf(smallDay().phone.day());
    const after = reportOf(hebrewDay().phone.day());
    const revision = revisionOf(after, { letter: 'A', model: before });
    const text = reportText(after, { revision });
    expect(text).toContain(alone(NOA));
    expect(outside(text)).not.toMatch(/[\u0590-\u08ff]/);
  });

  test('over the break of a line', () => {
    const lines = wrapText(`7 ${isolated(`${NOA} ${AMIR} ${NOA}`)} (muted)`, 12);
    expect(lines).toEqual([`7 ${alone(`${NOA} ${AMIR}`)}`, `${alone(NOA)} (muted)`]);
    expect(lines.every((line) => textWidth(line) <= 12)).toBe(true);
  });

  test('and other names get nothing', () => {
    expect(reportText(reportOf(smallDay().phone.day()))).not.toMatch(/[\u2068\u2069]/);
  });
});

// RFC 2046, section 4.1.2: text without a charset is US-ASCII.
test('text attached to a mail says that it is UTF-8', () => {
  const files = ['text/csv', 'text/plain', 'text/html', 'application/pdf'].map((type) => ({
    name: 'report',
    type,
    bytes: new Uint8Array([65]),
  }));
  const mail = unwrap(mailDraft({ to: [], subject: 's', text: 't', files, at: 0, zone: 0 }));
  const types = [...mail.matchAll(/Content-Type: (.*)\r\n/g)].map(([, type]) => type);
  expect(types.slice(2)).toEqual([
    'text/csv; charset=utf-8',
    'text/plain; charset=utf-8',
    'text/html; charset=utf-8',
    'application/pdf',
  ]);
});
