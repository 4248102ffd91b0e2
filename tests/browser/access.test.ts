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
});
