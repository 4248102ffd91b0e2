import { extract, type LetterparserNode, parse } from 'letterparser';
import PostalMime from 'postal-mime';
import { describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { type MailDraft, mailDraft } from '../../src/report/formats/eml.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { smallDay } from '../report/report-day.ts';
import { reportFonts as fonts } from '../report/report-fonts.ts';

const model = reportOf(smallDay().phone.day());
const csv = new TextEncoder().encode(reportCsv(model));
const pdf = reportPdf(model, { fonts }).bytes;

const DRAFT: MailDraft = {
  from: 'mixer@example.org',
  to: ['editor@example.org', 'assistant@example.org'],
  subject: `Sound report: Day 7 – Café & Co ${'ő'.repeat(60)}`,
  text: reportText(model),
  files: [
    { name: 'Scène 7.csv', type: 'text/csv; charset=utf-8', bytes: csv },
    { name: `${'Ω'.repeat(40)}.pdf`, type: 'application/pdf', bytes: pdf },
  ],
  at: Date.UTC(2026, 9, 7, 16, 45),
  zone: 120,
};

/** As the part says it: this parser takes UTF-8 for granted where nothing is said. */
const charsetOf = ({ headers }: LetterparserNode): string | undefined =>
  /charset="?([^";]+)/i.exec(headers['Content-Type'] ?? '')?.[1]?.toLowerCase();

const raw = (draft: MailDraft): string => {
  const result = mailDraft(draft);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

describe('a mail draft', () => {
  test('is read back whole by postal-mime', async () => {
    const mail = await new PostalMime().parse(raw(DRAFT));
    expect(mail.subject).toBe(DRAFT.subject);
    expect(mail.from?.address).toBe('mixer@example.org');
    expect(mail.to?.map(({ address }) => address)).toEqual(DRAFT.to);
    expect(new Date(mail.date!).getTime()).toBe(DRAFT.at);
    expect(mail.text?.trimEnd()).toBe(DRAFT.text.trimEnd());
    expect(mail.headers.find(({ key }) => key === 'x-unsent')?.value).toBe('1');
    expect(mail.attachments.map(({ filename, mimeType }) => [filename, mimeType])).toEqual([
      ['Scène 7.csv', 'text/csv'],
      [`${'Ω'.repeat(40)}.pdf`, 'application/pdf'],
    ]);
    const [first, second] = mail.attachments.map(({ content }) => Buffer.from(content as ArrayBuffer));
    expect(first!.equals(Buffer.from(csv))).toBe(true);
    expect(second!.equals(Buffer.from(pdf))).toBe(true);
  });

  test('is read back by letterparser too', () => {
    const mail = extract(raw({ ...DRAFT, subject: 'Sound report day 7', files: DRAFT.files.slice(0, 1) }));
    expect(mail.subject).toBe('Sound report day 7');
    expect(mail.text?.replaceAll('\r\n', '\n').trimEnd()).toBe(DRAFT.text.trimEnd());
    expect(mail.attachments).toHaveLength(1);
  });

  // RFC 2046, section 4.1.2: text without a charset is US-ASCII, and accented letters are damage.
  test('says of every part that is text that it is UTF-8, as both parsers read it', async () => {
    const text = 'Žofie, Åse, Rozália';
    const types = [
      'text/csv',
      'text/plain',
      'text/html',
      'text/plain; format=flowed',
      'text/csv; CHARSET="utf-8"',
    ];
    const files = types.map((type, at) => ({
      name: `${at}.txt`,
      type,
      bytes: new TextEncoder().encode(text),
    }));
    const message = raw({ ...DRAFT, subject: 's', text, files });
    const { body } = parse(message);
    const parts = Array.isArray(body) ? body : [];
    expect(parts.map(charsetOf)).toEqual(Array(6).fill('utf-8'));
    expect(extract(message).attachments).toHaveLength(5);
    const mail = await new PostalMime().parse(message);
    expect(mail.text?.trimEnd()).toBe(text);
    for (const { content } of mail.attachments)
      expect(new TextDecoder('utf-8', { fatal: true }).decode(content as ArrayBuffer)).toBe(text);
  });

  // RFC 5322, section 2.1.1 and 2.3; all encodings here keep to 78.
  test('is ASCII in lines of at most 78 characters with CR LF and no bare CR or LF', () => {
    const text = raw(DRAFT);
    expect(text).toMatch(/^[\t\r\n -~]*$/);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...text.split('\r\n').map(({ length }) => length))).toBeLessThanOrEqual(78);
  });

  test('lets no address, subject or file name bring in a header', () => {
    expect(mailDraft({ ...DRAFT, to: ['a@example.org\r\nBcc: b@example.org'] })).toEqual({
      ok: false,
      problem: { code: 'mail-address-not-read', address: 'a@example.org\r\nBcc: b@example.org' },
    });
    const text = raw({
      ...DRAFT,
      subject: 'x\r\nBcc: b@example.org',
      files: [{ name: 'x\r\nBcc: b@example.org', type: 'text/plain\r\nBcc: b', bytes: new Uint8Array() }],
    });
    expect(text).not.toMatch(/^Bcc/m);
  });

  test('without recipients or sender leaves those fields to the mail program', async () => {
    const mail = await new PostalMime().parse(raw({ ...DRAFT, from: undefined, to: [] }));
    expect(mail.to ?? []).toEqual([]);
    expect(mail.from).toBeUndefined();
  });

  test('of one day is the same text every time', () => {
    expect(raw(DRAFT)).toBe(raw(DRAFT));
  });
});
