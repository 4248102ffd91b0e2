import { describe, expect, test } from 'vitest';
import { mailtoHref, reportMailto } from '../../../src/report/formats/mailto.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { take } from '../../day/say.ts';
import { smallDay } from '../report-day.ts';

const bodyOf = (href: string): string =>
  decodeURIComponent(href.slice(href.indexOf('&body=') + '&body='.length));

describe('a mail link', () => {
  // RFC 6068, sections 2 and 5; 141 characters, computed from its rules.
  test('encodes spaces, line breaks and letters beyond ASCII as RFC 6068 says', () => {
    const href = mailtoHref(
      ['editor@example.org'],
      'Sound report: Day 12 – Café & Co',
      'Roll 12\n21A/3 circled\n',
    );
    expect(href).toBe(
      'mailto:editor@example.org?subject=Sound%20report%3A%20Day%2012%20%E2%80%93%20Caf%C3%A9%20%26%20Co&body=Roll%2012%0D%0A21A%2F3%20circled%0D%0A',
    );
    expect(href).toHaveLength(141);
  });

  test('separates addresses by commas and lets none break out of its place', () => {
    expect(mailtoHref(['a@example.org', 'b?bcc=c@example.org&x=1\r\n', ''], 's', '')).toBe(
      'mailto:a@example.org,b%3Fbcc%3Dc@example.org%26x%3D1?subject=s&body=',
    );
  });

  test('survives half a character', () => {
    expect(mailtoHref([], '\ud800', '\ud800')).toContain('&body=%EF%BF%BD');
  });
});

describe('a report sent by a mail link', () => {
  test('is whole where it fits, with CR LF line ends', () => {
    const model = reportOf(smallDay().phone.day());
    const { href, leftOut } = reportMailto(model, ['a@example.org'], 'Day 7', { budget: 5000 });
    expect(leftOut).toEqual({ parts: [], takes: [] });
    expect(bodyOf(href)).toBe(reportText(model).replaceAll('\n', '\r\n'));
  });

  test('keeps to 1800 encoded characters and says in its body what it leaves out', () => {
    const { phone } = smallDay();
    for (let number = 1; number <= 30; number += 1) phone.say(take('25', 0, number));
    const model = reportOf(phone.day());
    const { href, leftOut } = reportMailto(model, ['a@example.org'], 'Day 7');
    expect(href.length).toBeLessThanOrEqual(1800);
    expect(href.length).toBeGreaterThan(1400);
    expect(leftOut.takes.length).toBeGreaterThan(0);
    expect(bodyOf(href)).toContain(
      `${leftOut.takes.length} of 36 takes.\r\nThe whole report comes in a file of its own.`,
    );
    // The takes that stand are the first, whole; the others are those named as left out.
    const kept = model.takes.slice(0, model.takes.length - leftOut.takes.length);
    expect(leftOut.takes).toEqual(model.takes.slice(kept.length).map(({ takeId }) => takeId));
    for (const { file } of kept) expect(bodyOf(href)).toContain(file);
  });

  test('leaves out even the head rather than cut it when the head is longer than a link', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'day-described', fields: { remarks: 'wind '.repeat(700) } });
    const { href, leftOut } = reportMailto(reportOf(phone.day()), [], 'Day 7');
    expect(leftOut.parts).toContain('head');
    expect(bodyOf(href)).toContain('the head');
    expect(href.length).toBeLessThanOrEqual(1800);
  });
});
