import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../../src/report/formats/html.ts';
import { reportOf } from '../../../src/report/model.ts';
import { anyDay } from '../any-day.ts';
import { smallDay } from '../report-day.ts';

/** Every element the report uses; nothing that loads, runs, submits or leads away. */
const ELEMENTS = new Set([
  ...'html head meta title style body header h1 h2 p bdi dl div dt dd section ul li'.split(' '),
  ...'table thead tbody tr th td br svg g rect path ellipse text tspan'.split(' '),
]);

const elementsIn = (html: string): string[] =>
  [...html.matchAll(/<\/?([a-zA-Z][^\s/>]*)/g)].map(([, name]) => name!.toLowerCase());

const validated = (html: string): true | unknown =>
  XMLValidator.validate(html.replace('<!DOCTYPE html>', ''), { allowBooleanAttributes: false });

describe('the HTML report', () => {
  test('is one well-formed file that asks for nothing', () => {
    const html = reportHtml(reportOf(smallDay().phone.day()));
    expect(validated(html)).toBe(true);
    expect(html).not.toMatch(/\b(src|href|srcset|action|url)\b\s*[=(]/);
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
  });

  test('rings a circled take and says it in a word', () => {
    const html = reportHtml(reportOf(smallDay().phone.day()));
    expect(html).toContain('class="take circled"><bdi>24A/2</bdi></th>');
    expect(html).toContain('<td class="status"><bdi>circled</bdi></td>');
  });

  test('has the takes before all that is read once, and the day drawn, each track named once a run', () => {
    const html = reportHtml(reportOf(smallDay().phone.day()), { letter: 'A', issued: { at: 0, zone: 60 } });
    const at = (words: string): number => html.indexOf(words);
    expect(at('<p><bdi>Sound report A, 1970-01-01 01:00</bdi></p>')).toBeGreaterThan(0);
    expect(at('<h2>Takes')).toBeGreaterThan(at('Sound report A'));
    expect(at('<svg')).toBeGreaterThan(at('</table>'));
    expect(at('<h2>The day')).toBeGreaterThan(at('<svg'));
    const drawn = html.slice(at('<svg'));
    const names = [...drawn.matchAll(/<text class="name"[^>]*>([^<]*)</g)].map(([, name]) => name);
    // By hand: Ines, then Tomas for a false start, then Tomas and Dora ganged; Dora alone, then muted.
    expect(names).toEqual(['Mix', 'Boom', 'Ines', 'Tomas', 'Tomas, Dora, ganged', 'Dora', 'Dora']);
  });

  test('names itself at the foot of printed pages, and nothing typed leaves the style', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'day-described', fields: { production: '"; } </style> \\ é' } });
    const html = reportHtml(reportOf(phone.day()), { letter: 'A' });
    const [, foot] = /@bottom-left { content: "([^"]*)";/.exec(html)!;
    const read = foot!.replaceAll(/\\([0-9a-f]+) /g, (_, code: string) =>
      String.fromCodePoint(Number.parseInt(code, 16)),
    );
    expect(read).toBe('"; } </style> \\ é day 7 · Sound report A');
  });

  test('stays text whatever is typed into any field', () => {
    const { phone, first } = smallDay();
    const hostile = `"><img src=x onerror=alert(1)><script>alert(1)</script></style>&lt;'`;
    phone.say({
      kind: 'day-described',
      fields: { production: hostile, label: hostile, mixer: hostile, remarks: hostile },
    });
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: hostile } });
    phone.say({ kind: 'note-added', take: first, text: hostile });
    phone.say({ kind: 'take-described', take: first, fields: { file: hostile } });
    const html = reportHtml(reportOf(phone.day(), [{ code: 'x', text: hostile }]), { signature: hostile });
    expect(validated(html)).toBe(true);
    expect(elementsIn(html).filter((name) => !ELEMENTS.has(name))).toEqual([]);
    expect(html).toContain('&quot;&gt;&lt;img src=x onerror=alert(1)&gt;');
  });

  test('is well-formed for any day (seed 31)', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const html = reportHtml(reportOf(day));
        expect(validated(html)).toBe(true);
        expect(elementsIn(html).filter((name) => !ELEMENTS.has(name))).toEqual([]);
      }),
      { seed: 31, numRuns: 60 },
    );
  }, 30_000);
});
