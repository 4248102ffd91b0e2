import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { eachPlace } from './places.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const LOOKS = ['light', 'sunlight', 'dark', 'dim'];
const CLOCK = '2026-11-20T03:10:00Z';

interface Finding {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe-core finds on the page as it stands, each with the first element it is about. */
async function findings(page: Page, runOnly: readonly string[]): Promise<string[]> {
  // By the protocol, which the page's own policy on scripts does not forbid.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async (asked) => {
    const { axe } = window as unknown as {
      axe: { run(options: object): Promise<{ violations: Finding[] }> };
    };
    return (await axe.run({ runOnly: asked })).violations;
  }, runOnly);
  return found.map(({ id, help, nodes }) => `${id}, ${help}: ${nodes[0]?.html.slice(0, 160)}`);
}

const wear = (page: Page, look: string): Promise<void> =>
  page.evaluate((to) => {
    document.documentElement.dataset.look = to;
  }, look);

describe('every page and its main sheets', () => {
  // A look only changes colours, so all rules are run in the first look, and contrast in each.
  test('keep WCAG 2.2 A and AA as far as axe-core can tell, and 1.4.3 Contrast in every look', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const all: string[] = [];
      const seen = await eachPlace(stage, async (place) => {
        for (const look of LOOKS) {
          await wear(page, look);
          const found = await findings(page, look === LOOKS[0] ? LEVELS : ['color-contrast']);
          all.push(...found.map((text) => `${place}, ${look}: ${text}`));
        }
      });
      expect(all.join('\n')).toBe('');
      expect(seen.length).toBeGreaterThanOrEqual(58);
    });
  });

  // 2.5.8 Target Size (Minimum) asks for 24 CSS px; a thumb in the dark is given 48.
  test.each([
    { width: 390, height: 844 },
    { width: 360, height: 640 },
  ])('have buttons of at least 48 px at $width x $height (WCAG 2.2, 2.5.8)', async (viewport) => {
    await onStage({ viewport, clock: CLOCK }, async (stage) => {
      const small: string[] = [];
      const wide: string[] = [];
      await eachPlace(stage, async (place) => {
        const low = await stage.page.locator('button:visible, nav a:visible').evaluateAll((all) =>
          all
            // One that is just being replaced has no size any more.
            .filter((one) => one.isConnected && one.getBoundingClientRect().height < 47.5)
            .map((one) => `${one.textContent} ${one.getBoundingClientRect().height}`),
        );
        small.push(...low.map((one) => `${place}: ${one}`));
        const over = await stage.page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        if (over > 0) wide.push(`${place}: ${over} px`);
      });
      expect([...new Set(small)].join('\n')).toBe('');
      expect(wide.join('\n')).toBe('');
    });
  });

  // What scrolls by itself, such as a line of takes, may be wider than the screen; the page may not (1.4.10 Reflow).
  test('fit a narrow phone with text at 200 %: nothing is cut off sideways (WCAG 2.2, 1.4.4 and 1.4.10)', async () => {
    await onStage({ viewport: { width: 360, height: 640 }, clock: CLOCK }, async (stage) => {
      const session = await stage.context.newCDPSession(stage.page);
      await session.send('Page.enable');
      await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
      const cut: string[] = [];
      await eachPlace(stage, async (place) => {
        const found = await stage.page.evaluate(() => {
          const top = document.querySelector('dialog[open]') ?? document.body;
          const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
          const scrolls = (one: Element): boolean => {
            for (let at = one.parentElement; at && at !== document.body; at = at.parentElement)
              if (/auto|scroll/.test(getComputedStyle(at).overflowX) && at.scrollWidth > at.clientWidth + 1)
                return !at.matches('.body, .sheet, dialog');
            return false;
          };
          const outside = [
            ...top.querySelectorAll('button, a, p, h1, h2, h3, label, input, strong, dd'),
          ].filter((one) => {
            const { left, right, width } = one.getBoundingClientRect();
            return width > 0 && (left < -1 || right > innerWidth + 1) && !scrolls(one);
          });
          return [
            ...(wide > 0 ? [`the page is ${wide} px too wide`] : []),
            ...outside.map((one) => `${one.tagName} ${one.textContent?.slice(0, 40)}`),
          ];
        });
        cut.push(...found.map((one) => `${place}: ${one}`));
      });
      expect(cut.join('\n')).toBe('');
    });
  });
});
