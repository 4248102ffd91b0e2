import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { smallDay } from '../report/report-day.ts';
import { sharedChromium } from './harness-browsers.ts';

// Names in Hebrew letters, drawn from right to left by a real browser.
const NOA = '\u05e0\u05d5\u05e2\u05d4';
const AMIR = '\u05d0\u05de\u05d9\u05e8';

function model() {
  const { phone } = smallDay();
  phone.say(
    { kind: 'voice-described', voice: 'ines', fields: { part: NOA } },
    { kind: 'voice-described', voice: 'dora', fields: { part: AMIR } },
  );
  return reportOf(phone.day());
}

/** For every name on the page, the figures that are drawn next on its left, on the same line. */
async function numbersBeside(markup: string): Promise<string[]> {
  const page = await (await sharedChromium()).newPage({ viewport: { width: 390, height: 844 } });
  await page.setContent(markup);
  const found = await page.evaluate(
    (names) => {
      const drawn: { text: string; left: number; right: number; top: number }[] = [];
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        for (const { 0: text, index } of (node.textContent ?? '').matchAll(/\d+|[\u0590-\u05ff]+/g)) {
          const range = document.createRange();
          range.setStart(node, index);
          range.setEnd(node, index + text.length);
          const { left, right, top } = range.getBoundingClientRect();
          drawn.push({ text, left, right, top });
        }
      }
      return drawn
        .filter(({ text }) => names.includes(text))
        .map((name) => {
          const before = drawn
            .filter((one) => Math.abs(one.top - name.top) < 4 && one.right <= name.left + 0.5)
            .sort((one, other) => other.right - one.right)[0];
          return `${before?.text} ${name.text}`;
        });
    },
    [NOA, AMIR],
  );
  await page.close();
  return found;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** The tracks of the first take, beside each other on one line. */
const trackLine = (): string =>
  reportText(model())
    .split('\n')
    .find((line) => line.includes(NOA) && line.includes(AMIR))!;

describe('beside a name from right to left the number of its own track is drawn', () => {
  test.each(['ltr', 'auto'])('in the text, read in direction %s', async (direction) => {
    const beside = await numbersBeside(`<pre dir="${direction}">${escaped(trackLine())}</pre>`);
    expect(beside).toEqual([`3 ${NOA}`, `4 ${AMIR}`]);
  });

  test('in the list of takes on the web page', async () => {
    const html = reportHtml(model());
    const takes = html.slice(
      html.indexOf('<table class="takes">'),
      html.indexOf('</table>', html.indexOf('<table class="takes">')),
    );
    const style = html.slice(html.indexOf('<style>'), html.indexOf('</style>') + 8);
    const rows = await numbersBeside(`${style}${takes.replaceAll(/<td colspan="4">/g, '<td>')}</table>`);
    expect(rows.slice(0, 2)).toEqual([`3 ${NOA}`, `4 ${AMIR}`]);
  });
});
