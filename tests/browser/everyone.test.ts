import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';

const CLOCK = '2026-11-20T03:05:00Z';

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name }).first();
const dialog = (page: Page): Locator => page.getByRole('dialog');

/** A colour as the browser computed it. */
const styleOf = (of: Locator, property: string): Promise<string> =>
  of.evaluate((one, name) => getComputedStyle(one).getPropertyValue(name), property);

describe('what a person set on the phone', () => {
  test('forced colours keep pressed and current apart by more than a ground of ours (WCAG 2.2, 1.4.1, 1.4.11)', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await page.emulateMedia({ forcedColors: 'active' });
      await openSampleDay(stage);
      const tab = (name: string) => page.getByRole('link', { name, exact: true });
      expect(await styleOf(tab('Now'), 'background-color')).not.toBe(
        await styleOf(tab('Cast'), 'background-color'),
      );
      await button(page, /^About this day/).tap();
      const pressed = page.locator('.choice .button[aria-pressed="true"]').first();
      const loose = page.locator('.choice .button[aria-pressed="false"]').first();
      expect(await styleOf(pressed, 'background-color')).not.toBe(await styleOf(loose, 'background-color'));
      // A mark is drawn in the system's own ink.
      await page.goBack();
      const ink = await styleOf(page.locator('.row-text strong').first(), 'color');
      expect(await styleOf(page.locator('.mark').first(), 'color')).toBe(ink);
    });
  });

  test('reduced motion moves nothing, and what moves else is over in 150 ms (WCAG 2.2, 2.3.3)', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      const lasting = async (): Promise<number[]> => {
        await button(page, /^Slate/).tap();
        await dialog(page).waitFor();
        const all = await page.evaluate(() =>
          document.getAnimations().map(({ effect }) => Number(effect?.getComputedTiming().endTime ?? 0)),
        );
        await page.keyboard.press('Escape');
        await dialog(page).waitFor({ state: 'detached' });
        return all;
      };
      for (const ms of await lasting()) expect(ms).toBeLessThanOrEqual(150);
      await page.emulateMedia({ reducedMotion: 'reduce' });
      expect(await lasting()).toEqual([]);
    });
  });
});

/** The brightest tenth of a second of a start: mean brightness, 0 to 255, of the lightest frame that was shown. */
async function lightestFrame(stage: Stage): Promise<number> {
  const session = await stage.context.newCDPSession(stage.page);
  const frames: string[] = [];
  session.on('Page.screencastFrame', ({ data, sessionId }) => {
    frames.push(data);
    void session.send('Page.screencastFrameAck', { sessionId }).catch(() => undefined);
  });
  await session.send('Page.startScreencast', { format: 'png', maxWidth: 120, maxHeight: 260 });
  await stage.reload();
  await stage.page.locator('.rows .row').first().waitFor();
  await stage.page.waitForTimeout(300);
  await session.send('Page.stopScreencast');
  const brightness = await stage.page.evaluate(async (shots) => {
    const means: number[] = [];
    for (const shot of shots) {
      const image = new Image();
      image.src = `data:image/png;base64,${shot}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
      canvas.drawImage(image, 0, 0);
      const { data } = canvas.getImageData(0, 0, image.width, image.height);
      let sum = 0;
      for (let at = 0; at < data.length; at += 4) sum += (data[at]! + data[at + 1]! + data[at + 2]!) / 3;
      means.push(sum / (data.length / 4));
    }
    return means;
  }, frames);
  expect(brightness.length).toBeGreaterThan(0);
  return Math.max(...brightness);
}

test('no start flashes white on a dark set, on a phone whose own look is light', async () => {
  await onStage({ clock: CLOCK, colorScheme: 'light' }, async (stage) => {
    await openSampleDay(stage);
    const wear = (look: string) =>
      stage.page.evaluate((to) => localStorage.setItem('rollbook-look', to), look);
    // The same start in the light look shows that a bright frame would be seen.
    await wear('light');
    await stage.reload();
    expect(await lightestFrame(stage)).toBeGreaterThan(180);
    await wear('dim');
    await stage.reload();
    expect(await lightestFrame(stage)).toBeLessThan(30);
    const around = stage.page.locator('meta[name="theme-color"]').first();
    expect(await around.getAttribute('content')).toBe('#000');
  });
});

test('back, Escape and a tap beside leave what was typed in a sheet only at the second time', async () => {
  await onStage({ clock: CLOCK }, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    const ways: readonly (() => Promise<unknown>)[] = [
      () => page.goBack(),
      () => page.keyboard.press('Escape'),
      () => page.touchscreen.tap(195, 4),
    ];
    for (const leave of ways) {
      await button(page, /^note 2 take/).tap();
      await dialog(page).getByLabel('Own words').fill('hum at the end');
      await leave();
      await page.getByRole('alert').filter({ hasText: 'is not saved' }).waitFor();
      expect(await dialog(page).getByLabel('Own words').inputValue()).toBe('hum at the end');
      await leave();
      await dialog(page).waitFor({ state: 'detached' });
      expect(page.url()).toMatch(/now$/);
    }
  });
});

/** What has the focus, as a screen reader would begin to say it: `button "Roll"`. */
async function focused(page: Page): Promise<string> {
  const snapshot = await page.locator(':focus').ariaSnapshot();
  return snapshot.split('\n')[0]!.replace(/^- /, '');
}

/** Tabs until something by that name has the focus, checking each stop on the way; then presses Enter. */
async function walkTo(page: Page, wanted: RegExp, most = 60): Promise<void> {
  for (let step = 0; step < most; step += 1) {
    await page.keyboard.press('Tab');
    if ((await page.locator(':focus').count()) === 0) continue;
    const at = await focused(page);
    const stop = await page.locator(':focus').evaluate((one) => {
      const { left, top, width, height } = one.getBoundingClientRect();
      const [x, y] = [left + width / 2, top + Math.min(height / 2, 20)];
      const above = document.elementFromPoint(x, y);
      return { ring: getComputedStyle(one).outlineStyle, seen: one.contains(above) || above?.contains(one) };
    });
    expect(stop.ring, `2.4.7 Focus Visible: ${at}`).not.toBe('none');
    expect(stop.seen, `2.4.11 Focus Not Obscured: ${at}`).toBe(true);
    if (!wanted.test(at)) continue;
    await page.keyboard.press('Enter');
    return;
  }
  throw new Error(`2.1.1 Keyboard: nothing by ${wanted} in ${most} stops`);
}

describe('the main job', () => {
  test('is done by keyboard alone: 2.1.1, 2.1.2, 2.4.3, 2.4.7 and 2.4.11 of WCAG 2.2', async () => {
    await onStage({ clock: CLOCK, phone: false }, async (stage) => {
      const { page } = stage;
      const closed = () => dialog(page).waitFor({ state: 'detached' });
      await button(page, /Sample day/).waitFor();
      await walkTo(page, /Sample day/);
      await page.locator('.dock').waitFor();
      await walkTo(page, /button "Roll"/);
      await button(page, /^Cut$/).waitFor();
      await walkTo(page, /button "Cut"/);
      await button(page, /^Roll$/).waitFor();
      await walkTo(page, /button "circle 3 take/);
      await walkTo(page, /button "note 3 take/);
      await dialog(page).waitFor();
      await walkTo(page, /button "plane"/);
      await closed();
      expect(await focused(page)).toMatch(/note 3 take/);
      await walkTo(page, /button .*Wiktoria/);
      await dialog(page).waitFor();
      await walkTo(page, /button "Emil/);
      await closed();
      // Escape leaves a sheet, and the focus is where it was.
      await walkTo(page, /button "Slate/);
      await dialog(page).waitFor();
      await page.keyboard.press('Escape');
      await closed();
      expect(await focused(page)).toMatch(/Slate/);
      await walkTo(page, /link "Line"/);
      await page.locator('.line-row').first().waitFor();
      await walkTo(page, /button .*A1 on Emil/);
      await dialog(page).waitFor();
      await walkTo(page, /button "before 45B\/3"/);
      await page.keyboard.press('Escape');
      await closed();
      await walkTo(page, /link "Wrap"/, 400);
      const report = page.locator('.report-text');
      await expect.poll(() => report.textContent()).toContain('(45B/3)');
      const lastTake = /\(45B\/3\).*?TOTALS/s.exec((await report.textContent())!)![0];
      expect(lastTake).toContain('6 Emil');
      expect(lastTake).toContain('- plane');
    });
  });

  test('has the focus back the moment a sheet is gone, before the next key can move it (2.4.3)', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      // Looks in the same turn in which the sheet leaves the page: nothing was painted and no key heard since.
      await page.evaluate(() => {
        const back: (string | undefined)[] = [];
        Object.assign(window, { back });
        new MutationObserver((changes) => {
          const gone = changes.flatMap(({ removedNodes }) => [...removedNodes]);
          if (gone.some((node) => node instanceof Element && node.matches('dialog')))
            back.push(document.activeElement?.className);
        }).observe(document, { childList: true, subtree: true });
      });
      const slate = page.locator('.dock-name');
      const leaves: readonly (() => Promise<unknown>)[] = [
        () => page.keyboard.press('Escape'),
        () => dialog(page).getByRole('button', { name: 'Close' }).click(),
        () => page.goBack(),
      ];
      for (const leave of leaves) {
        await slate.focus();
        await page.keyboard.press('Enter');
        await dialog(page).waitFor();
        await leave();
        await dialog(page).waitFor({ state: 'detached' });
      }
      const back = await page.evaluate(() => (window as unknown as { back: string[] }).back);
      expect(back).toEqual(leaves.map(() => 'dock-name'));
    });
  });

  test('is told by roles, names and live announcements, as a screen reader gets them (4.1.2, 4.1.3, 1.3.1)', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.evaluate(() => {
        const heard: string[] = [];
        Object.assign(window, { heard });
        for (const region of document.querySelectorAll('[role="status"], [role="alert"]')) {
          const hear = (): void => {
            const text = region.textContent?.trim();
            if (text) heard.push(`${region.getAttribute('role')}: ${text}`);
          };
          new MutationObserver(hear).observe(region, { childList: true, characterData: true, subtree: true });
        }
      });
      const take = page.getByRole('region', { name: 'Take' });
      await take.getByRole('button', { name: 'Roll', exact: true }).tap();
      await take.getByRole('button', { name: 'Cut', exact: true }).tap();
      const circle = take.getByRole('button', { name: 'circle 3 take 45B/3' });
      await circle.tap();
      await expect.poll(() => circle.getAttribute('aria-pressed')).toBe('true');
      await page
        .getByRole('main')
        .getByRole('button', { name: /Wiktoria/ })
        .tap();
      const sheet = page.getByRole('dialog', { name: 'A1 is on Wiktoria' });
      await sheet.getByRole('list', { name: 'Give A1 to' }).getByRole('button', { name: /^Emil/ }).tap();
      await sheet.waitFor({ state: 'detached' });
      const heard = () => page.evaluate(() => (window as unknown as { heard: string[] }).heard);
      await expect
        .poll(heard)
        .toEqual([
          'status: 45B/3 rolling',
          'status: 45B/3 cut',
          'status: 45B/3 circled',
          'status: A1 on Emil',
        ]);

      // A sheet that stays open puts the page out of earshot, so it says itself what was done.
      await take.getByRole('button', { name: /^note/ }).tap();
      const note = page.getByRole('dialog', { name: 'Note on 45B/3' });
      await note.getByRole('button', { name: 'tail slate' }).tap();
      await note.getByRole('status').filter({ hasText: '45B/3 tail-slated' }).waitFor();
      await note.getByRole('button', { name: 'Close' }).tap();
      await note.waitFor({ state: 'detached' });

      // Every page has its landmarks, one first heading, and a title over every sheet.
      const day = page.getByRole('navigation', { name: 'Day' });
      for (const tab of ['Cast', 'Rig', 'Line', 'Wrap', 'Now']) {
        await day.getByRole('link', { name: tab, exact: true }).tap();
        // The page before has one of each as well, so its own mark comes first.
        await expect.poll(() => day.locator('[aria-current="page"]').textContent()).toBe(tab);
        await expect.poll(() => page.getByRole('heading', { level: 1 }).count(), { message: tab }).toBe(1);
        for (const landmark of ['banner', 'main'] as const) {
          await expect
            .poll(() => page.getByRole(landmark).count(), { message: `${tab}: ${landmark}` })
            .toBe(1);
        }
      }

      // What could not be done is said at once, where it was tried.
      await take.getByRole('button', { name: /^Slate/ }).tap();
      await page.getByRole('button', { name: 'Use this slate' }).tap();
      await page.getByRole('dialog').getByRole('alert').filter({ hasText: /\w/ }).waitFor();
    });
  });
});
