import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';

const CLOCK = '2026-11-20T03:10:00Z';
const button = ({ page }: Stage, name: string | RegExp) => page.getByRole('button', { name }).first();
const lookOf = ({ page }: Stage) => page.evaluate(() => document.documentElement.dataset.look);

describe('on a dark set', () => {
  test('one tap dims from the first screen, and one goes back to the look before, over a reload too', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      await openSampleDay(stage);
      await stage.page.evaluate(() => localStorage.setItem('rollbook-look', 'sunlight'));
      await stage.reload();
      expect(await lookOf(stage)).toBe('sunlight');
      await button(stage, /^Night$/).tap();
      expect(await lookOf(stage)).toBe('dim');
      await stage.reload();
      expect(await lookOf(stage)).toBe('dim');
      await button(stage, /^Night$/).tap();
      expect(await lookOf(stage)).toBe('sunlight');
    });
  });

  test('the screen is kept on while a take is open, asked for again after being hidden, and let go at the cut', async () => {
    const before = (): void => {
      const held = { now: 0, asked: 0 };
      Object.assign(window, { held });
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          async request() {
            held.now += 1;
            held.asked += 1;
            const lock = {
              released: false,
              async release() {
                if (!lock.released) held.now -= 1;
                lock.released = true;
              },
            };
            Object.assign(window, { takeLockAway: lock.release });
            return lock;
          },
        },
      });
    };
    await onStage({ clock: CLOCK, before }, async (stage) => {
      const held = () =>
        stage.page.evaluate(() => (window as unknown as { held: { now: number; asked: number } }).held);
      await openSampleDay(stage);
      expect(await held()).toEqual({ now: 0, asked: 0 });
      await button(stage, /^Roll$/).tap();
      await expect.poll(held).toEqual({ now: 1, asked: 1 });
      await stage.page.getByRole('link', { name: 'Rig', exact: true }).tap();
      await button(stage, /^Inputs/).waitFor();
      expect(await held()).toEqual({ now: 1, asked: 1 });
      await stage.page.evaluate(async () => {
        await (window as unknown as { takeLockAway(): Promise<void> }).takeLockAway();
        document.dispatchEvent(new Event('visibilitychange'));
      });
      await expect.poll(held).toEqual({ now: 1, asked: 2 });
      await stage.page.getByRole('link', { name: 'Now, a take is rolling', exact: true }).tap();
      await button(stage, /^Cut$/).tap();
      await expect.poll(held).toEqual({ now: 0, asked: 2 });
    });
  });

  test('the left hand has Roll and Close on its side, remembered over a reload', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      await openSampleDay(stage);
      const left = async (name: RegExp): Promise<number> => (await button(stage, name).boundingBox())!.x;
      expect(await left(/^Roll$/)).toBeGreaterThan(195);
      await button(stage, /^About this day/).tap();
      expect(await left(/^Close$/)).toBeGreaterThan(195);
      await stage.page.getByRole('link', { name: 'Settings' }).tap();
      await button(stage, /^Left hand$/).tap();
      await button(stage, /^Back$/).tap();
      await button(stage, /^About this day/).tap();
      await expect.poll(() => left(/^Close$/)).toBeLessThan(60);
      await button(stage, /^Close$/).tap();
      await stage.reload();
      await button(stage, /^Roll$/).waitFor();
      expect(await left(/^Roll$/)).toBeLessThan(60);
    });
  });
});

describe('the back button', () => {
  test('closes a sheet and stays on the page; the next one goes to the page before', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const sheets = () => page.getByRole('dialog').count();
      await openSampleDay(stage);
      await page.getByRole('link', { name: 'Line', exact: true }).tap();
      await page.locator('.line-row').first().tap();
      await expect.poll(sheets).toBe(1);
      await page.goBack();
      await expect.poll(sheets).toBe(0);
      expect(page.url()).toMatch(/line$/);
      await page.goBack();
      await page.locator('.dock').waitFor();
      expect(page.url()).toMatch(/now$/);
    });
  });

  test('finds nothing of a sheet that was closed by its button, by Escape, or gave way to another', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const sheets = () => page.getByRole('dialog').count();
      await openSampleDay(stage);
      await button(stage, /^Slate/).tap();
      await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
      await expect.poll(sheets).toBe(0);
      await button(stage, /^Slate/).tap();
      await page.locator('dialog[open]').waitFor();
      await page.keyboard.press('Escape');
      await expect.poll(sheets).toBe(0);
      // The sheet of inputs gives way to that of a track, which back closes.
      await button(stage, /sources/).tap();
      await page
        .getByRole('dialog')
        .getByRole('button', { name: /^line 1/ })
        .tap();
      await page.getByRole('heading', { name: /^A1 is on/ }).waitFor();
      await page.goBack();
      await expect.poll(sheets).toBe(0);
      expect(page.url()).toMatch(/now$/);
      await page.goBack();
      await page.getByRole('heading', { name: 'Rollbook' }).waitFor();
    });
  });

  test('comes back to the day from a page that a link in a sheet led to', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await button(stage, /^About this day/).tap();
      await page.getByRole('link', { name: 'All days' }).tap();
      await page.getByRole('heading', { name: 'Rollbook' }).waitFor();
      await page.goBack();
      await page.locator('.dock').waitFor();
      expect(await page.getByRole('dialog').count()).toBe(0);
      await page.goBack();
      await page.getByRole('heading', { name: 'Rollbook' }).waitFor();
    });
  });
});

describe('a sheet', () => {
  test('keeps the focus inside both ways round, and the page out of reach until it goes', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const session = await stage.context.newCDPSession(page);
      await session.send('Accessibility.enable');
      // As a screen reader finds it.
      const roll = async (): Promise<number> => {
        const { root } = await session.send('DOM.getDocument');
        const { nodes } = await session.send('Accessibility.queryAXTree', {
          nodeId: root.nodeId,
          role: 'button',
          accessibleName: 'Roll',
        });
        return nodes.filter(({ ignored }) => !ignored).length;
      };
      const sheets = () => page.getByRole('dialog').count();
      // At either end the platform leads over the browser's own bar, where nothing of the page has the focus.
      const focused = () =>
        page.evaluate(() => {
          const { activeElement, body } = document;
          if (activeElement === body) return 'the bar';
          return activeElement?.closest('dialog') ? activeElement.textContent : 'the page below';
        });
      const walk = async (key: string, stops: number): Promise<(string | null)[]> => {
        const seen = [];
        for (let step = 0; step < stops; step += 1) {
          await page.keyboard.press(key);
          seen.push(await focused());
        }
        return seen;
      };
      await openSampleDay(stage);
      const row = page.locator('main button.row').nth(1);
      await row.tap();
      await page.getByRole('heading', { name: 'Why' }).waitFor();
      expect([await focused(), await roll()]).toEqual(['Close', 0]);
      expect(await walk('Shift+Tab', 2)).toEqual(['the bar', 'now']);
      const once = await walk('Tab', await page.locator('dialog button').count());
      expect(once).toEqual(expect.arrayContaining(['Close', 'now']));
      expect(once).not.toContain('the page below');
      // What had the focus is gone: still nothing below can have it, and Escape still leaves.
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      const [next] = await walk('Tab', 1);
      expect(next).not.toBe('the page below');
      await page.evaluate(() => document.querySelector<HTMLElement>('.tabs a')!.focus());
      expect(await focused()).toBe(next);
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await page.keyboard.press('Escape');
      await expect.poll(sheets).toBe(0);
      expect(await roll()).toBe(1);
      await expect(row.evaluate((one) => one === document.activeElement)).resolves.toBe(true);
    });
  });

  test('goes at a tap beside it, which does nothing to the page below', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await button(stage, /^Slate/).tap();
      await page.locator('dialog[open]').waitFor();
      await page.touchscreen.tap(60, 24);
      await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
      await page.touchscreen.tap(60, 24);
      await expect.poll(() => page.getByRole('dialog').count()).toBe(1);
    });
  });
});

describe('text at 200 % (WCAG 2.2, 1.4.4 Resize Text; 1.4.10 Reflow)', () => {
  test('leaves Roll and the rows usable at 360 x 640, scrolled down only', async () => {
    await onStage({ clock: CLOCK, viewport: { width: 360, height: 640 } }, async (stage) => {
      const { page } = stage;
      const session = await stage.context.newCDPSession(page);
      await session.send('Page.enable');
      await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
      await openSampleDay(stage);
      expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('32px');
      await page.locator('.message').waitFor({ state: 'detached' });
      await stage.screenshot('text-200');
      const roll = (await button(stage, /^Roll$/).boundingBox())!;
      expect(roll.y + roll.height).toBeLessThanOrEqual(640);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      // The free area between what stays: two rows fit there, and the last can be brought into it.
      const rows = page.locator('.rows .row');
      await rows.last().scrollIntoViewIfNeeded();
      await page.evaluate(() => window.scrollBy(0, 10_000));
      await stage.screenshot('text-200-end');
      const foot = (await page.locator('.foot').boundingBox())!;
      const last = (await rows.last().boundingBox())!;
      const one = (await rows.nth(-2).boundingBox())!;
      expect(last.y + last.height).toBeLessThanOrEqual(foot.y + 1);
      expect(one.y).toBeGreaterThanOrEqual(0);
      await button(stage, /^Roll$/).tap();
      await button(stage, /^Cut$/).waitFor();
    });
  });
});
