import { beforeAll, describe, expect, test } from 'vitest';
import { handOver } from '../../src/commands/day/hand-over.ts';
import { checkedSoFar, handOversOf } from '../../src/day/wrap/hand-over.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { reportChanges } from '../../src/report/revision/report-changes.ts';
import { take } from '../day/say.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { drawnPages } from './drawn-pages.ts';
import { smallDay } from './report-day.ts';
import { reportFonts as fonts } from './report-fonts.ts';

const SLIP = {
  carriers: [
    { name: 'Card A', card: 'card-a', copies: 2 },
    { name: 'Drive 3', copies: 0 },
  ],
  to: 'S. Okafor',
  role: 'data wrangler',
  files: 5,
  bytes: 41_600_000,
  checked: false,
  signature: { strokes: '0,0 500,200;700,100' },
};

/** A day of which Card A and Drive 3 went to somebody, 7 October 2026, 09:21. */
function handedOver(slip: Partial<typeof SLIP> = {}) {
  const { phone } = smallDay();
  const said = handOver({ ...SLIP, ...slip });
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
  return { phone };
}

const WORDS =
  'Card A (2 checked copies), Drive 3 (no checked copy) to S. Okafor, data wrangler, 2026-10-07 09:21: 5 files, 41.6 MB; not checked; signed';
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('what was handed over', () => {
  beforeAll(needPoppler, 300_000);

  test('is in text, web page and pages, with whether it was checked and copied', () => {
    const model = reportOf(handedOver().phone.day());
    expect(flat(reportText(model))).toContain(`HANDED OVER - ${WORDS}`);
    expect(reportHtml(model)).toContain(WORDS);
    expect(flat(pageTexts(reportPdf(model, { fonts }).bytes).join(' '))).toContain(`Handed over ${WORDS}`);
  });

  test('is signed as it was drawn', () => {
    const model = reportOf(handedOver().phone.day());
    expect(reportHtml(model)).toContain('<path d="M0 0L500 200M700 100L700 100"/>');
    const drawn = drawnPages(reportPdf(model, { fonts }).bytes).split('\n');
    const line = drawn.find((mark) => /^line 0\.9: [\d.,]+ [\d.,]+$/.test(mark))!;
    const [from, to] = line
      .replace('line 0.9: ', '')
      .split(' ')
      .map((point) => point.split(',').map(Number));
    // Half of a field 150 points wide and 60 high.
    expect([to![0]! - from![0]!, to![1]! - from![1]!]).toEqual([75, 30]);
    expect(drawn.filter((mark) => mark.endsWith('S. Okafor'))).toHaveLength(1);
  });

  test('says a typed signature, and that there is none', () => {
    const signed = (signature: object) =>
      reportText(reportOf(handedOver({ signature } as never).phone.day()));
    expect(flat(signed({ typed: 'Sue O.' }))).toContain('not checked; signed Sue O.');
    expect(flat(signed({}))).toContain('not checked; not signed');
  });

  test('is none of the earlier forms, which come back as they went out', () => {
    const day = handedOver().phone.day();
    for (const form of [1, 2]) expect(reportText(reportOf(day, [], form))).not.toContain('HANDED OVER');
  });

  test('makes a revision when it is said, taken back, or signed anew', () => {
    const { phone } = smallDay();
    const before = reportOf(phone.day());
    const said = handOver(SLIP);
    const id = phone.id(said.ok ? said.value[0]! : take('31', 0, 1));
    const after = reportOf(phone.day());
    expect(reportChanges(before, after)).toMatchObject([{ kind: 'added', what: 'Handed over', is: WORDS }]);
    phone.say({ kind: 'fact-retracted', targets: [id], by: 'undo' });
    expect(handOversOf(phone.day())).toEqual([]);
    expect(reportChanges(after, reportOf(phone.day()))).toMatchObject([{ kind: 'gone', was: WORDS }]);
    const other = reportOf(handedOver({ signature: { strokes: '9,9' } }).phone.day());
    expect(reportChanges(after, other).map(({ kind }) => kind)).toEqual(['gone', 'added']);
  });

  test('of nobody, of nothing, or with a name that is too long is refused', () => {
    const code = (slip: object) => {
      const said = handOver({ ...SLIP, ...slip });
      return said.ok ? 'ok' : said.problem.code;
    };
    expect(code({ carriers: [] })).toBe('nothing-chosen');
    expect(code({ to: ' ' })).toBe('name-empty');
    expect(code({ carriers: [{ name: ' ' }] })).toBe('name-empty');
    expect(code({ to: 'x'.repeat(201) })).toBe('name-too-long');
    expect(code({ signature: { typed: 'x'.repeat(201) } })).toBe('name-too-long');
    expect(code({})).toBe('ok');
  });
});

test('cards are checked so far as the last check says, and as takes were logged since', () => {
  const { phone } = smallDay();
  const was = () => checkedSoFar(phone.day());
  const check = { kind: 'card-checked', files: 5, recordings: 5, matched: 5 } as const;
  expect(was()).toEqual({ whole: false, was: 'never', count: 0 });
  phone.say({ ...check, open: 2 });
  expect(was()).toEqual({ whole: false, was: 'open', count: 2 });
  phone.say({ ...check, open: 0, stopped: true });
  expect(was()).toMatchObject({ whole: false, was: 'stopped' });
  phone.say({ ...check, open: 0 });
  expect(was()).toMatchObject({ whole: true, was: 'whole' });
  phone.say(take('30', 0, 1));
  expect(was()).toEqual({ whole: false, was: 'before-last-takes', count: 1 });
});
