import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { PAGES, TABS } from '../../src/ui/frame/route.ts';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const CLOCK = '2026-11-20T03:05:00Z';
const DAY_PAGES = [...TABS, ...Object.keys(PAGES)];

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe-core finds against its best practices: landmarks, one first heading, nothing outside a region. */
async function findings(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(how: object): Promise<{ violations: Finding[] }> } };
    return (await axe.run({ runOnly: ['best-practice'] })).violations;
  });
  return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
}

test('every page keeps the best practices of axe-core, with a message on it too', async () => {
  await onStage({ clock: CLOCK }, async (stage) => {
    const { page } = stage;
    const all: string[] = [];
    const look = async (place: string): Promise<void> => {
      await page.locator('h1').first().waitFor({ state: 'attached' });
      all.push(...(await findings(page)).map((found) => `${place}: ${found}`));
    };
    await look('days');
    await openSampleDay(stage);
    await page.locator('.roll').tap();
    for (const name of DAY_PAGES) {
      await page.evaluate((to) => {
        location.hash = location.hash.replace(/\w+$/, to);
      }, name);
      await page.locator(`main[data-tab="${name}"]`).waitFor();
      expect(await page.locator('.message').count(), name).toBe(1);
      await look(name);
    }
    expect(all).toEqual([]);
  });
});

test('the first stop of the keyboard is a link that skips the head (2.4.1 Bypass Blocks)', async () => {
  await onStage({ clock: CLOCK }, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    const address = page.url();
    await page.locator('.summary').waitFor();
    const focused = () => page.evaluate(() => document.activeElement?.className);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const link = page.locator('.skip-link');
    expect((await link.boundingBox())!.width).toBeLessThan(2);
    await link.focus();
    const { x, width, height } = (await link.boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(47.5);
    // Everything before it in the page cannot take the focus.
    expect(await page.evaluate(() => document.querySelector('a, button, input, [tabindex]')?.className)).toBe(
      'unseen skip-link',
    );
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('body');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('summary-rest');
    expect(page.url()).toBe(address);
  });
});

test.each([
  { width: 360, height: 640 },
  { width: 390, height: 844 },
])('the report is read at $width x $height without scrolling sideways', async (viewport) => {
  await onStage({ viewport, clock: CLOCK }, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
    const report = page.locator('.report-text');
    await report.waitFor();
    const longest = (await report.textContent())!.split('\n').map((line) => line.length);
    // Wider than any phone, or it would show nothing.
    expect(Math.max(...longest)).toBeGreaterThan(60);
    expect(await report.evaluate((one) => one.scrollWidth - one.clientWidth)).toBeLessThanOrEqual(0);
  });
});
