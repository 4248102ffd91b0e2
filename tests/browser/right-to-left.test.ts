import PostalMime from 'postal-mime';
import { beforeAll, describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { mailDraft } from '../../src/report/formats/eml.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import { take } from '../day/say.ts';
import { smallDay } from '../report/report-day.ts';
import { unwrap } from '../upkeep/unwrap.ts';
import { sharedChromium } from './harness-browsers.ts';

// Names in Hebrew and Arabic letters, drawn from right to left by a real browser.
const NOA = '\u05e0\u05d5\u05e2\u05d4';
const AMIR = '\u05d0\u05de\u05d9\u05e8';
const SALMA = '\u0633\u0644\u0645\u0649';
const NADIM = '\u0646\u062f\u064a\u0645';

/** Four names from right to left on tracks 2 to 5, and a scene and a file that begin with such letters. */
function model(): ReportModel {
  const { phone } = smallDay();
  phone.say(
    { kind: 'voice-described', voice: 'boom', fields: { part: SALMA } },
    { kind: 'voice-described', voice: 'ines', fields: { part: NOA } },
    { kind: 'voice-described', voice: 'dora', fields: { part: AMIR } },
    { kind: 'voice-described', voice: 'tomas', fields: { part: NADIM } },
    take(NOA, 0, 3, { length: { frames: 25 * 134, rate: '25' } }),
    { kind: 'recorder-set', settings: { timecodeRate: '24' } },
    take('25', 0, 1),
  );
  return reportOf(phone.day());
}

interface Drawn {
  readonly text: string;
  readonly left: number;
  readonly top: number;
}

/** Every figure and every name where it is drawn; what is hidden or has no box is not. */
async function drawn(markup: string, width = 1280): Promise<Drawn[]> {
  const page = await (await sharedChromium()).newPage({ viewport: { width, height: 844 } });
  await page.setContent(markup);
  const found = await page.evaluate(() => {
    const pieces: Drawn[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      for (const { 0: text, index } of (node.textContent ?? '').matchAll(
        /[\d:]*\d|[\u0590-\u06ff]+(?: [\u0590-\u06ff]+)*/g,
      )) {
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + text.length);
        const [box] = range.getClientRects();
        if (box && box.width > 0) pieces.push({ text, left: box.left, top: box.top + box.height / 2 });
      }
    }
    return pieces;
  });
  await page.close();
  return found;
}

/** What is drawn, line by line, as somebody reads the numbers: from the left. */
function readFromLeft(pieces: readonly Drawn[]): string[] {
  const lines: Drawn[][] = [];
  for (const piece of [...pieces].sort((a, b) => a.top - b.top)) {
    const line = lines.at(-1);
    if (line && Math.abs(line[0]!.top - piece.top) < 5) line.push(piece);
    else lines.push([piece]);
  }
  return lines.map((line) =>
    line
      .sort((a, b) => a.left - b.left)
      .map(({ text }) => text)
      .join(' '),
  );
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const pre = (text: string, direction = 'ltr'): string =>
  `<pre dir="${direction}" style="unicode-bidi:normal">${escaped(text)}</pre>`;

/** The takes of the web page with its style, without the page's head. */
function takesOf(html: string): string {
  const at = html.indexOf('<table class="takes">');
  const style = html.slice(html.indexOf('<style>'), html.indexOf('</style>') + 8);
  return style + html.slice(at, html.indexOf('</table>', at) + 8);
}

/** The text and the web page as somebody else's parser reads them out of the mail. */
async function mailed(): Promise<{ text: string; html: string }> {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const draft = mailDraft({
    ...{ to: [], subject: 's', text: reportText(model()), at: 0, zone: 0 },
    files: [{ name: 'report.html', type: 'text/html', bytes: bytes(reportHtml(model())) }],
  });
  const { text, attachments } = await new PostalMime().parse(unwrap(draft));
  return { text: text!, html: new TextDecoder().decode(attachments[0]!.content as ArrayBuffer) };
}

const TRACKS = `1 2 ${SALMA} 3 ${NOA} 4 ${AMIR}`;

describe('beside a name from right to left the number of its own track is drawn', () => {
  let mail: { text: string; html: string };
  beforeAll(async () => {
    mail = await mailed();
  });

  test.each(['ltr', 'auto'])('in the text, read in direction %s', async (direction) => {
    const lines = readFromLeft(await drawn(pre(reportText(model()), direction)));
    expect(lines).toContain(TRACKS);
    expect(lines).toContain(`24 1 3 ${NADIM} 4 ${AMIR}`);
  });

  test('in the text of the mail, wrapped by a narrow reader', async () => {
    const narrow = `<div dir="auto" style="white-space:pre-wrap;font:16px monospace">${escaped(mail.text)}</div>`;
    expect(readFromLeft(await drawn(narrow, 1280))).toContain(TRACKS);
    const pieces = (await drawn(narrow, 320)).map(({ text }) => text);
    const wrapped = readFromLeft(await drawn(narrow, 320)).join(' ');
    expect(pieces).toContain(SALMA);
    expect(wrapped).toContain(TRACKS);
  });

  test.each(['page', 'mail'])('in the list of takes of the %s, wide and narrow', async (where) => {
    const html = takesOf(where === 'mail' ? mail.html : reportHtml(model()));
    expect(readFromLeft(await drawn(html))).toContain(TRACKS);
    expect(readFromLeft(await drawn(html, 390)).join(' ')).toContain(TRACKS);
  });

  test.each(['ltr', 'auto'])('in a cell of the table with all tracks, read in direction %s', async (dir) => {
    const [, line] = reportCsv(model(), { columns: ['tracks'] }).split('\r\n');
    const [cell] = line!.split('","');
    expect(readFromLeft(await drawn(pre(cell!, dir)))).toEqual([TRACKS]);
  });
});

describe('figures stay in the order they were said in, beside a slate from right to left', () => {
  const linesOf = (text: string, ...starts: string[]): string[] =>
    starts.map((start) => text.split('\n').find((line) => line.startsWith(start))!);

  test('in the rates and the totals of the text', async () => {
    const [timecode, longest] = linesOf(reportText(model()), 'Timecode', 'Longest');
    expect(readFromLeft(await drawn(pre(`${timecode}\n${longest}`)))).toEqual([
      // A slate from right to left has its own figure on its left.
      `25 3 ${NOA} 24 25 1`,
      `3 ${NOA} 2:14`,
    ]);
  });

  test('in the rates and the totals of the page', async () => {
    const html = reportHtml(model());
    const parts = [...html.matchAll(/<dd>(<bdi>(?:(?!<\/dd>).)*(?:24 fps|2:14)<.*?)<\/dd>/gs)].map(
      ([, part]) => part,
    );
    const lines = parts.map((part) => `<p>${part}</p>`).join('');
    expect(readFromLeft(await drawn(lines))).toContain(`3 ${NOA} 2:14`);
  });
});
