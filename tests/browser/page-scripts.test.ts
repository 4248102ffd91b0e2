import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SCRIPT_FONTS } from '../../.ci/browser.mjs';
import { readPages, type Word } from '../oracle/page-picture.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { largeDay } from '../report/large-day.ts';
import { onStage, openStage, type Stage } from './harness.ts';
import { openSaid } from './said-day.ts';
import { tab } from './tapping.ts';

/** A name in each of the scripts, on the tracks from 3 on: somebody else is on 2 from the first take on. */
const NAMES = {
  Arabic: '\u0633\u0644\u0645\u0649 \u0646\u062f\u064a\u0645',
  Hebrew: '\u05e0\u05d5\u05e2\u05d4 \u05db\u05d4\u05df',
  Devanagari: '\u092e\u0940\u0930\u093e \u0926\u0947\u0935\u0940',
  Chinese: '\u9648\u96e8\u6850',
  Japanese: '\u6728\u6751\u967d\u5b50',
  Korean: '\uae40\ubbfc\uc11c',
  Thai: '\u0e19\u0e20\u0e32\u0e1e\u0e23',
  Armenian: '\u0531\u0580\u0561\u0574\u0565',
  Vietnamese: 'Nguy\u1ec5n \u0110\u1ee9c',
  'combining marks': 'A\u0330sa',
  'a name one stroke from another': '\u672b\u6751\u967d\u5b50',
  'a name with a number from right to left': '\u05d0\u05de\u05d9\u05e8 7',
} as const;

/** No font has it: its plane is empty. */
const UNASSIGNED = '\u{40000}';

/** Pages of a day with these names, made by the built app in this browser. */
async function pagesOf(stage: Stage, names: readonly string[]): Promise<Buffer> {
  const { page } = stage;
  await openSaid(stage, {
    facts: [...largeDay({ takes: 6, tracks: 16, changeEvery: 9, names: ['', ...names] }).facts],
  });
  await tab(page, 'Wrap');
  await page.getByText('sound report A.pdf').waitFor();
  const download = page.waitForEvent('download', (one) => one.suggestedFilename().endsWith('.pdf'));
  await page.getByRole('button', { name: 'Download the report' }).tap();
  return readFileSync(await (await download).path());
}

/** Without the marks of direction that poppler adds. */
const letters = (text: string): string =>
  text
    .replaceAll(/[\u200e\u200f\u202a-\u202e]/g, '')
    .replaceAll(/\s+/g, ' ')
    .normalize('NFC');

/** Poppler gives the place of a word with its letters in the order drawn. */
const drawnFromRight = (text: string): string =>
  /[\u0590-\u06ff]/.test(text) ? [...text].reverse().join('') : text;

describe('pages in the scripts of the world', () => {
  let stage: Stage;
  let pdf: Buffer;
  let text: string;
  beforeAll(async () => {
    needPoppler();
    stage = await openStage();
    pdf = await pagesOf(stage, Object.values(NAMES));
    // In reading order a word from right to left comes right, as drawn a number stays with its word.
    text = letters([readPages(pdf, (pages) => pages.text), ...pageTexts(pdf)].join('\n'));
    const [lacking] = /(?<=These pages show \? for )[^.]+/.exec(text) ?? [];
    if (lacking) {
      const fonts = SCRIPT_FONTS.join(', ');
      throw new Error(`This machine has no font for ${lacking}; Debian has some in ${fonts}`);
    }
  });
  afterAll(() => stage?.close());

  test.each(Object.entries(NAMES))('have %s as text that poppler finds, after its track', (_, name) => {
    const track = Object.values<string>(NAMES).indexOf(name) + 3;
    // Poppler itself puts a number among such words on their other side.
    const found = name.replace(/^(\D+) (\d)$/, '$2 $1');
    expect(text).toContain(`${track} ${letters(found)}`);
    expect(text).not.toContain('These pages show ?');
  });

  test('draw the numbers of tracks left of names that go from right to left, and a number in a name within it', () => {
    readPages(pdf, ({ words }) => {
      const numbersBy = (name: string): (string | undefined)[] => {
        const [first] = name.split(' ');
        return words.filter((word) => drawnFromRight(word.text) === first).map((word) => leftOf(words, word));
      };
      const [hebrew, numbered] = [numbersBy(NAMES.Hebrew), numbersBy('\u05d0\u05de\u05d9\u05e8')];
      // In the picture of the day, and in the list of the first take.
      expect(hebrew).toEqual(['4', '4']);
      expect(numbered).toEqual(['7', '7']);
    });
  });

  test('draw every name, and two names that differ by a stroke differently', () => {
    readPages(pdf, ({ words, darkIn }) => {
      const drawn = Object.values(NAMES).map((name) => {
        const [first] = name.split(' ');
        const dots = darkIn(words.find((word) => letters(drawnFromRight(word.text)) === letters(first!))!);
        expect(dots.match(/#/g)?.length ?? 0, name).toBeGreaterThan(20);
        return dots;
      });
      expect(new Set(drawn).size).toBe(drawn.length);
    });
  });

  test('of letters that no font has say so, and the web page goes along by itself', async () => {
    await onStage({}, async (other) => {
      const bytes = await pagesOf(other, [`Ines ${UNASSIGNED}`]);
      expect(pageTexts(bytes)[0]).toContain('These pages show ? for U+40000. The web page has them.');
      await other.page
        .getByText('1 character cannot be drawn on the pages: the web page goes along.')
        .waitFor();
      expect(await other.page.getByText('sound report A.html').count()).toBeGreaterThan(0);
    });
  });
});

/** The number that is nearest on the left of a word in its line. */
function leftOf(words: readonly Word[], { page, left, top, bottom }: Word): string | undefined {
  const middle = (top + bottom) / 2;
  return words
    .filter((one) => one.page === page && one.top < middle && one.bottom > middle && one.right <= left + 0.5)
    .sort((a, b) => b.right - a.right)
    .map(({ text }) => letters(text))
    .find((text) => /^\d+$/.test(text));
}
