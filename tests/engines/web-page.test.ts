import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer, { type LaunchOptions } from 'puppeteer-core';
import { describe, expect, test } from 'vitest';
import { loadSample } from '../../sample-days/load.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportOf } from '../../src/report/model.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { longDay, movedDay } from '../report/printed-days.ts';
import { chromium, firefox } from './puppeteer-engine.ts';

const issued = { at: Date.UTC(2026, 9, 7, 16, 5), zone: 120 };
const PAGES = {
  sample: reportHtml(reportOf(loadSample('full')), { letter: 'A', issued }),
  long: reportHtml(reportOf(longDay()), { letter: 'A', issued, signature: 'N. Aske' }),
  moved: reportHtml(reportOf(movedDay().phone.day()), { letter: 'A', issued }),
};
const WIDTHS = [360, 390, 768, 1280] as const;
const HEIGHT = 640;

/** In the page: how far it runs over its side, what words are broken within, and where the first take stands. */
function measured() {
  const broken: string[] = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode(); node; node = texts.nextNode()) {
    if ((node.parentElement as Element).namespaceURI !== 'http://www.w3.org/1999/xhtml') continue;
    // A line may end at a hyphen.
    for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[^\s-]+/g)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const lines = new Set(Array.from(range.getClientRects(), ({ top }) => Math.round(top)));
      if (lines.size > 1) broken.push(word);
    }
  }
  const over = Array.from(document.querySelectorAll('body *')).filter(
    (one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5,
  );
  return {
    over: over.map(({ tagName }) => tagName),
    scrolls: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    broken,
    firstTake: document.querySelector('.takes tbody tr:not(.roll)')?.getBoundingClientRect().bottom ?? 0,
    pictures: document.querySelectorAll('.pictures > svg').length,
  };
}

/** In turn, in one window: every page at every width. */
async function measuredIn(options: LaunchOptions) {
  const home = mkdtempSync(join(tmpdir(), 'rollbook-page-'));
  const browser = await puppeteer.launch({
    ...options,
    headless: true,
    userDataDir: join(home, 'profile'),
    env: { ...process.env, HOME: home },
  });
  try {
    const page = await browser.newPage();
    const found: ({ name: string; width: number } & ReturnType<typeof measured>)[] = [];
    for (const [name, html] of Object.entries(PAGES)) {
      const file = join(home, `${name}.html`);
      writeFileSync(file, html);
      for (const width of WIDTHS) {
        await page.setViewport({ width, height: HEIGHT });
        await page.goto(pathToFileURL(file).href);
        found.push({ name, width, ...(await page.evaluate(measured)) });
      }
    }
    return found;
  } finally {
    await browser.close();
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** What a browser prints of a page, sheet by sheet. */
async function printedIn(options: LaunchOptions, html: string): Promise<string[]> {
  const browser = await puppeteer.launch({ ...options, headless: true });
  try {
    const page = await browser.newPage();
    await page.setContent(html);
    return pageTexts(await page.pdf({ preferCSSPageSize: true }));
  } finally {
    await browser.close();
  }
}

describe('the web page of a report', () => {
  test.each([
    ['Chromium', chromium],
    ['Firefox', firefox],
  ])('is read at every width, takes above the fold, in %s', async (_, options) => {
    const found = await measuredIn(options());
    expect(found).toHaveLength(Object.keys(PAGES).length * WIDTHS.length);
    for (const { name, width, over, scrolls, broken, firstTake, pictures } of found) {
      const where = `${name} at ${width}`;
      expect(over, where).toEqual([]);
      expect(scrolls, where).toBe(0);
      expect(broken, where).toEqual([]);
      expect(firstTake, where).toBeGreaterThan(0);
      expect(firstTake, where).toBeLessThan(HEIGHT);
      expect(pictures, where).toBeGreaterThan(0);
    }
  });

  test('is printed with its number, letter, time of issue and roll on every sheet', async () => {
    needPoppler();
    const sheets = await printedIn(chromium(), PAGES.long);
    expect(sheets.length).toBeGreaterThan(3);
    const rolls = sheets.map((text): string[] => text.match(/Roll 7[AB]\b/g) ?? []);
    const ofTakes = sheets.map((text) => /^Take File Start End Length Status$/m.test(text));
    for (const [at, text] of sheets.entries()) {
      expect(text).toContain(`page ${at + 1} of ${sheets.length}`);
      expect(text.replaceAll(/\s+/g, ' ')).toContain('Sound report A, 2026-10-07 18:05');
      // The second roll comes after 26 takes, and goes on over a break.
      if (ofTakes[at]) expect(rolls[at], `sheet ${at + 1}`).not.toEqual([]);
    }
    const sheetsOf = (roll: string) => rolls.filter((said, at) => ofTakes[at] && said.includes(roll)).length;
    expect(sheetsOf('Roll 7A')).toBeGreaterThan(1);
    expect(sheetsOf('Roll 7B')).toBeGreaterThan(1);
  });
});
