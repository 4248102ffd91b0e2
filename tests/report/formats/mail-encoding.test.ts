import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mailDate } from '../../../src/report/formats/eml.ts';
import {
  base64Lines,
  encodedWords,
  fileNameParameters,
  headerField,
  quotedPrintable,
} from '../../../src/report/formats/mail-encoding.ts';

const utf8 = new TextEncoder();

describe('a header', () => {
  // RFC 2047, sections 2 and 5; computed from its rules.
  test.each([
    ['Scène 12', ['=?UTF-8?B?U2PDqG5lIDEy?=']],
    ['Größe', ['=?UTF-8?B?R3LDtsOfZQ==?=']],
    ['Sound report: Day 12', ['Sound', 'report:', 'Day', '12']],
  ])('writes %s as %j', (text, words) => {
    expect(encodedWords(text)).toEqual(words);
  });

  // RFC 2047, section 2: an encoded word has at most 75 characters.
  test('encodes 35 bytes as one word of 60 characters and 23 times é as two words of whole letters', () => {
    expect(encodedWords('Sound report: Day 12 – Café & Co').map(({ length }) => length)).toEqual([60]);
    const read = encodedWords('é'.repeat(23)).map((word) =>
      Buffer.from(word.slice(10, -2), 'base64').toString(),
    );
    expect(read).toEqual(['é'.repeat(22), 'é']);
  });

  test('has no line longer than 76 characters and no torn letter, whatever the subject (seed 5)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (subject) => {
        const field = headerField('Subject', encodedWords(subject));
        for (const line of field.split('\r\n')) expect(line.length).toBeLessThanOrEqual(76);
        expect(field).toMatch(/^Subject:(\r\n)?( [ -~]*\r\n)+$/);
        const words = encodedWords(subject);
        const read = words.map((word) => Buffer.from(word.slice(10, -2), 'base64').toString());
        expect(words[0]!.startsWith('=?') ? read.join('') : words.join(' ')).toBe(subject);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  // RFC 5322, section 3.3.
  test.each([
    [Date.UTC(2026, 9, 7, 16, 45), 120, 'Wed, 07 Oct 2026 18:45:00 +0200'],
    [Date.UTC(2026, 0, 1, 2, 0, 9), -210, 'Wed, 31 Dec 2025 22:30:09 -0330'],
    [Date.UTC(2026, 9, 7), 0, 'Wed, 07 Oct 2026 00:00:00 +0000'],
  ])('dates %d at zone %d as %s', (at, zone, date) => {
    expect(mailDate(at, zone)).toBe(date);
  });

  // RFC 2183, section 2; RFC 2231, sections 3, 4 and 4.1.
  test.each([
    ['report.pdf', ['filename="report.pdf"']],
    ['Salt Road day 7.csv', ['filename="Salt Road day 7.csv"']],
    ['Scène 12.csv', ["filename*=UTF-8''Sc%C3%A8ne%2012.csv"]],
    ['a"b.csv', ["filename*=UTF-8''a%22b.csv"]],
  ])('names the file %s as %j', (name, parameters) => {
    expect(fileNameParameters(name)).toEqual(parameters);
  });

  test('numbers the pieces of a long name from 0 and says the charset once (RFC 2231, section 4.1)', () => {
    const pieces = fileNameParameters(`${'é'.repeat(30)}.pdf`);
    expect(pieces.map((piece) => piece.slice(0, 12))).toEqual([
      'filename*0*=',
      'filename*1*=',
      'filename*2*=',
      'filename*3*=',
    ]);
    expect(pieces.map((piece) => piece.includes("UTF-8''"))).toEqual([true, false, false, false]);
    expect(decodeURIComponent(pieces.map((piece) => piece.slice(12).replace("UTF-8''", '')).join(''))).toBe(
      `${'é'.repeat(30)}.pdf`,
    );
  });
});

describe('a body', () => {
  // RFC 2045, section 6.7.
  test.each([
    ['a=b', 'a=3Db'],
    ['café', 'caf=C3=A9'],
    ['ends in a blank ', 'ends in a blank=20'],
    ['one\ntwo\r\nthree', 'one\r\ntwo\r\nthree'],
    ['x'.repeat(77), `${'x'.repeat(75)}=\r\nxx`],
    ['x'.repeat(76), 'x'.repeat(76)],
  ])('of %j is %j', (text, encoded) => {
    expect(quotedPrintable(text)).toBe(encoded);
  });

  // RFC 2045, section 6.8: 1 MiB is 1 398 104 characters, 1 434 898 with line ends.
  test('in base64 has lines of 76 characters', () => {
    const lines = base64Lines(new Uint8Array(1024 * 1024));
    expect(lines).toHaveLength(1_434_898);
    expect(lines.replaceAll('\r\n', '')).toHaveLength(1_398_104);
  });

  test('comes back from quoted-printable and base64 as it was (seed 6)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        const tidy = text.replaceAll(/\r\n?/g, '\n');
        const encoded = quotedPrintable(tidy);
        for (const line of encoded.split('\r\n')) expect(line).toMatch(/^[\t -~]{0,75}[!-~]?$/);
        const bytes = encoded
          .replaceAll('=\r\n', '')
          .replaceAll('\r\n', '\n')
          .replaceAll(/=([0-9A-F]{2})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
        expect(Buffer.from(bytes, 'latin1').toString()).toBe(tidy);
        expect(Buffer.from(base64Lines(utf8.encode(tidy)), 'base64').toString()).toBe(tidy);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
