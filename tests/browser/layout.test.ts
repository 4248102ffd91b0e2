import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { startDay } from './tapping.ts';
import { wholeRows } from './whole-rows.ts';

const CLOCK = '2026-11-20T03:05:00Z';
const SMALL = { width: 360, height: 640 };
const USUAL = { width: 390, height: 844 };

/** Sets the size of all text, as a phone's setting does. */
async function setText({ context, page }: Stage, percent: number): Promise<void> {
  const session: CDPSession = await context.newCDPSession(page);
  await session.send('Page.enable');
  await session.send('Page.setFontSizes', {
    fontSizes: { standard: (16 * percent) / 100, fixed: Math.round((13 * percent) / 100) },
  });
  const size = await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));
  expect(size).toBe((16 * percent) / 100);
}

const heightOf = async (page: Page, selector: string): Promise<number> =>
  (await page.locator(selector).boundingBox())!.height;

describe('the screen is for its rows', () => {
  test.each([
    { viewport: SMALL, rows: 7 },
    { viewport: USUAL, rows: 11 },
  ])(
    'Now shows $rows whole rows of the sample day at $viewport.width x $viewport.height',
    async ({ viewport, rows }) => {
      await onStage({ viewport, clock: CLOCK }, async (stage) => {
        await openSampleDay(stage);
        await expect.poll(() => wholeRows(stage.page)).toBeGreaterThanOrEqual(rows);
      });
    },
  );

  test('the head is at most 72 px high, and 100 px with text at 200 %, however long the title', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.getByRole('button', { name: /^About this day/ }).tap();
      const production = 'The Long and Winding Return of the Lighthouse Keepers';
      await page.getByLabel('Production').fill(production);
      await page.getByRole('button', { name: 'Save' }).tap();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(72);
      const title = page.locator('.head-day strong');
      expect(await title.textContent()).toContain(production);
      // One line of it, and the rest in the sheet that it opens.
      expect(await title.evaluate((one) => one.scrollWidth > one.clientWidth)).toBe(true);
      await title.tap();
      await page.getByRole('dialog').getByText(production).first().waitFor();
      await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await setText(stage, 200);
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(100);
    });
  });

  test('the head of a real day is as low, which has more to say of its clock and its backup', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await startDay(page, 'Harbour Lights');
      await page.locator('.head-state').filter({ hasText: 'saved, not backed up' }).waitFor();
      expect(await page.locator('.head-state').textContent()).toContain('clock not synced');
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(72);
      await setText(stage, 200);
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(100);
    });
  });

  test('with text at 200 % the sync button is whole, and four rows are seen at once', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await setText(stage, 200);
      const cut = await page.locator('.head-clock, .head-clock :not(.unseen)').evaluateAll((all) =>
        all
          .filter((one) => {
            const { left, right, bottom } = one.getBoundingClientRect();
            const head = document.querySelector('.head')!.getBoundingClientRect();
            const isCut = one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1;
            return left < 0 || right > innerWidth || bottom > head.bottom || isCut;
          })
          .map((one) => `${one.className} ${one.textContent}`),
      );
      expect(cut).toEqual([]);
      // The page scrolls as a whole at this size; only the dock stays.
      await page.locator('main .rows').evaluate((list) => list.scrollIntoView({ block: 'start' }));
      await expect.poll(() => wholeRows(page)).toBeGreaterThanOrEqual(4);
    });
  });
});

/** Where the middle of something is, and whether a tap there would reach it. */
const isReached = (page: Page, selector: string): Promise<boolean> =>
  page.locator(selector).evaluate((one) => {
    const { left, top, width, height } = one.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + height / 2);
    return one.contains(hit);
  });

describe('a message', () => {
  test('stands above the dock, off the title and off every row, while nothing near the thumb moves', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.locator('.message').waitFor({ state: 'detached' });
      const boxOf = async (selector: string) => (await page.locator(selector).first().boundingBox())!;
      const before = [await boxOf('.dock'), await boxOf('main .rows .row')];
      await page.locator('.roll').tap();
      const message = page.locator('.message');
      await message.waitFor();
      expect([await boxOf('.dock'), await boxOf('main .rows .row')]).toEqual(before);
      const said = await boxOf('.message');
      const body = await boxOf('.body');
      expect(said.y + said.height).toBeLessThanOrEqual(before[0]!.y);
      // The list ends where the message begins, so nothing of it lies below.
      expect(body.y + body.height).toBeLessThanOrEqual(said.y);
      for (const selector of ['.roll', '.dock-name', '.dim-toggle', '.head-day'])
        expect(await isReached(page, selector), selector).toBe(true);
    });
  });

  test('has Undo in it, which undoes just that, says so, and can be redone', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const message = page.locator('.message');
      const does = (name: string) => message.getByRole('button', { name, exact: true });
      await openSampleDay(stage);
      const row = page.locator('main .rows .row').filter({ hasText: 'line 1' });
      const was = await row.textContent();
      await row.tap();
      await page.getByRole('dialog').getByRole('button', { name: /^Emil/ }).tap();
      await message.filter({ hasText: 'A1 on Emil' }).waitFor();
      expect(await row.textContent()).toContain('Emil');
      await does('Undo').tap();
      await message.filter({ hasText: 'Undone: A1 on Emil' }).waitFor();
      expect(await row.textContent()).toBe(was);
      expect(await does('Undo').count()).toBe(0);
      await does('Redo').tap();
      await expect.poll(() => row.textContent()).toContain('Emil');
    });
  });

  test('is gone after a while, and Undo is still one tap from Now', async () => {
    await onStage({ viewport: SMALL }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      expect(await page.locator('.summary-undo').count()).toBe(0);
      await page.clock.install();
      await page.locator('.roll').tap();
      const message = page.locator('.message').filter({ hasText: 'rolling' });
      await message.waitFor();
      await page.clock.fastForward(12_000);
      expect(await message.count()).toBe(1);
      await page.clock.fastForward(5_000);
      await message.waitFor({ state: 'detached' });
      await expect.poll(() => wholeRows(page)).toBeGreaterThanOrEqual(7);
      await page.locator('.summary-undo').tap();
      await page.locator('.message').filter({ hasText: 'Undone: take 45B/3' }).waitFor();
      expect(await page.locator('.dock-rolling').count()).toBe(0);
    });
  });

  test('is not taken from under the keyboard: it stays as long as the focus is in it', async () => {
    await onStage({}, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.clock.install();
      await page.locator('.roll').tap();
      const undo = page.locator('.message').getByRole('button', { name: 'Undo' });
      await undo.focus();
      await page.clock.fastForward(40_000);
      expect(await undo.evaluate((one) => one === document.activeElement)).toBe(true);
      await page.locator('.roll').focus();
      await page.clock.fastForward(10_000);
      await undo.waitFor({ state: 'detached' });
    });
  });

  test('of one matter stays out of the sheet of another', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      const sheet = page.getByRole('dialog');
      const close = async (): Promise<void> => {
        await sheet.getByRole('button', { name: 'Close', exact: true }).last().tap();
        await sheet.waitFor({ state: 'detached' });
      };
      await openSampleDay(stage);
      await page.getByRole('button', { name: /^note 2 take/ }).tap();
      await sheet.getByRole('button', { name: 'tail slate' }).tap();
      await sheet.locator('.message').filter({ hasText: 'tail-slated' }).waitFor();
      await sheet.locator('form button[type="submit"]').tap();
      await sheet.getByRole('alert').filter({ hasText: 'empty' }).waitFor();
      await close();
      await page.locator('main .rows .row').filter({ hasText: 'line 1' }).tap();
      await sheet.waitFor();
      expect(await sheet.locator('.message').count()).toBe(0);
      expect(await sheet.getByRole('status').textContent()).toBe('');
    });
  });
});

/** WCAG 2.2, definition "contrast ratio", of two colours as the browser computed them. */
function contrast(one: string, other: string): number {
  const [high, low] = [one, other]
    .map((colour) => {
      const [red, green, blue] = colour
        .match(/[\d.]+/g)!
        .slice(0, 3)
        .map((part) => Number(part) / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
      return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
    })
    .sort((a, b) => b - a);
  return (high! + 0.05) / (low! + 0.05);
}

describe('while a take is open', () => {
  test.each(['light', 'dark', 'sunlight', 'dim'])(
    'the dock is the strongest thing on the screen in the look %s',
    async (look) => {
      await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
        const { page } = stage;
        await openSampleDay(stage);
        await page.evaluate((to) => {
          document.documentElement.dataset.look = to;
        }, look);
        const styleOf = (selector: string, name: string): Promise<string> =>
          page
            .locator(selector)
            .first()
            .evaluate((one, of) => getComputedStyle(one).getPropertyValue(of), name);
        const paper = await styleOf('html', 'background-color');
        const rest = await styleOf('.roll', 'border-top-width');
        await page.locator('.roll').tap();
        await page.locator('.dock-rolling').waitFor();
        const ground = await styleOf('.dock-rolling', 'background-color');
        for (const selector of [
          '.dock-take strong',
          '.dock-elapsed',
          '.dock-name .soft',
          '.dock-last .button',
        ])
          expect(contrast(await styleOf(selector, 'color'), ground), selector).toBeGreaterThanOrEqual(4.5);
        expect(
          contrast(await styleOf('.roll', 'color'), await styleOf('.roll', 'background-color')),
        ).toBeGreaterThanOrEqual(4.5);
        if (look === 'dim') {
          // Nothing lights up on a dark set: it is black, with a frame, and Cut has a heavier one than Roll had.
          expect(contrast(ground, '0 0 0')).toBe(1);
          expect(contrast(await styleOf('.dock-rolling', 'border-top-color'), paper)).toBeGreaterThanOrEqual(
            4.5,
          );
          const edge = await styleOf('.roll', 'border-top-width');
          expect(Number.parseFloat(edge)).toBeGreaterThan(Number.parseFloat(rest));
        } else {
          expect(contrast(ground, paper)).toBeGreaterThanOrEqual(12);
          expect(contrast(await styleOf('.roll', 'background-color'), ground)).toBeGreaterThanOrEqual(12);
        }
      });
    },
  );

  test('the dock tells its running length, in hours too', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.locator('.roll').tap();
      const length = page.locator('.dock-elapsed');
      for (const [time, shown] of [
        ['03:05:07', '0:07'],
        ['03:06:23', '1:23'],
        ['04:07:08', '1:02:08'],
      ] as const) {
        await stage.setClock(`2026-11-20T${time}Z`);
        await expect.poll(() => length.textContent()).toBe(shown);
      }
      const isCut = await page
        .locator('.dock-take > *')
        .evaluateAll((all) =>
          all.some((one) => one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1),
        );
      expect(isCut).toBe(false);
    });
  });
});

test('on a phone on its side the slate is one line, nothing is under the dock, and a message moves nothing', async () => {
  await onStage({ viewport: { width: 844, height: 390 }, clock: CLOCK }, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    const boxOf = async (selector: string) => (await page.locator(selector).first().boundingBox())!;
    const name = page.locator('.dock-name strong');
    expect(await name.evaluate((one) => one.scrollWidth <= one.clientWidth && one.clientHeight < 40)).toBe(
      true,
    );
    const body = await boxOf('.body');
    const foot = await boxOf('.foot');
    expect(body.x + body.width).toBeLessThanOrEqual(foot.x);
    const rows = await page
      .locator('main .rows .row')
      .evaluateAll((all) => all.filter((row) => row.getBoundingClientRect().bottom <= innerHeight).length);
    expect(rows).toBeGreaterThanOrEqual(8);
    for (const one of [name, page.locator('.roll'), ...(await page.locator('.tabs a').all())]) {
      const { y, height } = (await one.boundingBox())!;
      expect(y + height).toBeLessThanOrEqual(390);
    }
    await page.locator('.message').waitFor({ state: 'detached' });
    const before = await boxOf('.dock');
    await page.locator('.dock-last button').first().tap();
    await page.locator('.message').waitFor();
    expect(await boxOf('.dock')).toEqual(before);
  });
});

test('the spectrum is drawn again when text is made larger and the screen stays as wide', async () => {
  await onStage({ viewport: USUAL, clock: CLOCK }, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    await page.evaluate(() => {
      location.hash = location.hash.replace(/[^/]+$/, 'radio');
    });
    await page.locator('.spectrum-name').first().waitFor();
    const drawn = () =>
      page.locator('.spectrum-name').evaluateAll((all) => ({
        letters: [...new Set(all.map((one) => getComputedStyle(one).fontSize))],
        outside: all
          .filter((one) => {
            const { left, right } = one.getBoundingClientRect();
            return left < -1 || right > innerWidth + 1;
          })
          .map((one) => one.textContent),
      }));
    expect(await drawn()).toEqual({ letters: ['12px'], outside: [] });
    await setText(stage, 125);
    await expect.poll(drawn).toEqual({ letters: ['15px'], outside: [] });
  });
});
