import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { openStage, type Stage } from './harness.ts';
import { pasteCode, shownCode, toPage } from './phones-page.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { takeOne, tap } from './tapping.ts';

const folder = mkdtempSync(join(tmpdir(), 'rollbook-hand-over-'));
/** What the other phone's camera will see. */
const seen = join(folder, 'seen.mjpeg');
/** The browser plays 30 pictures of the file a second: each code stands for four of them. */
const REPEATS = 4;
/** The code may change between its number and its picture. */
const SPARE = 8;

let mixer: Stage;
let other: Stage;
beforeAll(async () => {
  [mixer, other] = await Promise.all([openStage(), openStage({ camera: seen })]);
});
afterAll(async () => {
  await Promise.all([mixer, other].map((stage) => stage?.close()));
  rmSync(folder, { recursive: true, force: true });
});

const sheet = (page: Page) => page.getByRole('dialog');
const ids = async ({ page }: Stage, day: string): Promise<string[]> =>
  ((await storedFacts(page, day)) as Envelope[]).map(({ id }) => id).sort();

/** The codes that the mixer's phone shows go before the other's camera: each once, and some for what was missed. */
async function film(page: Page): Promise<void> {
  const title =
    (await sheet(page)
      .getByText(/ in \d+ codes?$/)
      .textContent()) ?? '';
  const wanted = Number(/in (\d+) codes?$/.exec(title)![1]) + SPARE;
  const pictures = new Map<string | null, Buffer>();
  const code = page.locator('.shown-code');
  while (pictures.size < wanted) {
    const number = await code.getAttribute('data-number');
    if (!pictures.has(number))
      pictures.set(number, await code.screenshot({ type: 'jpeg', quality: 80, animations: 'disabled' }));
  }
  const frames = [...pictures.values()].flatMap((picture) => Array<Buffer>(REPEATS).fill(picture));
  writeFileSync(seen, Buffer.concat(frames));
}

describe('a day is handed over with no server', () => {
  test('to a phone that asks with the code it was shown, and shows the same two words', async () => {
    await tap(mixer.page, 'Sample day');
    await mixer.page.locator('.dock').waitFor();
    await mixer.waitSaved();
    await toPage(mixer.page, 'phones');
    await tap(mixer.page, 'Let a phone join');
    await tap(mixer.page, 'Hand the day over');
    const invitation = await shownCode(mixer.page);
    await tap(mixer.page, 'Close');
    await other.page.evaluate(() => {
      location.hash = '#/get';
    });
    await tap(other.page, 'Scan a join code');
    await pasteCode(other.page, invitation);
    const words = sheet(other.page)
      .locator('strong')
      .filter({ hasText: /^[a-z]{5} [a-z]{5}$/ });
    const spoken = (await words.textContent())!;
    const asking = await shownCode(other.page);
    await tap(mixer.page, 'Scan a code');
    await pasteCode(mixer.page, asking);
    await sheet(mixer.page).getByText(spoken).waitFor();
    await sheet(mixer.page).getByRole('button', { name: 'Hand over' }).tap();
  });

  test('which gets it by codes, sealed, and imports it once it was looked at', async () => {
    const day = openDayId(mixer.page);
    await mixer.page.getByText('only phones that have joined this day can read them').waitFor();
    await tap(mixer.page, 'Give the whole day');
    await film(mixer.page);
    await tap(mixer.page, 'Done');
    await tap(other.page, 'Get the day');
    await tap(other.page, 'It shows codes now');
    await other.page.getByRole('dialog', { name: 'Import this?' }).waitFor();
    await sheet(other.page).getByText('Sealed, and checked').waitFor();
    expect(await ids(other, day)).toEqual([]);
    await sheet(other.page).getByRole('button', { name: 'Import', exact: true }).tap();
    await other.page.locator('main[data-tab="phones"]').waitFor();
    await other.waitSaved();
    expect(await ids(other, day)).toEqual(await ids(mixer, day));
  });

  test('and owns it from then on, while the phone before reads everything and changes nothing', async () => {
    await tap(other.page, 'Let a phone join');
    await sheet(other.page).getByText('Hand the day over').waitFor();
    await tap(other.page, 'Close');
    await toPage(other.page, 'now');
    await takeOne(other.page);
    await toPage(mixer.page, 'now');
    await mixer.page.getByText('This phone reads the day and changes nothing.').waitFor();
    expect(await mixer.page.getByRole('button', { name: /^Roll/ }).count()).toBe(0);
  });

  test('and gives what it adds as a sealed file, which says nothing of the day to whoever carries it', async () => {
    const { page } = other;
    const day = openDayId(page);
    await toPage(page, 'phones');
    await tap(page, 'Sealed file');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      sheet(page).getByRole('button', { name: 'Download the sealed file' }).tap(),
    ]);
    const path = await download.path();
    expect(download.suggestedFilename()).toBe('sealed day.txt');
    expect(readFileSync(path, 'utf8')).toMatch(/^rollbook-sealed\n[A-Za-z0-9+/=\n]+$/);
    await mixer.page.evaluate(() => {
      location.hash = '#/';
    });
    await tap(mixer.page, 'Import');
    await mixer.page.getByRole('dialog').locator('input').setInputFiles(path);
    await sheet(mixer.page).getByText('Sealed, and checked').waitFor();
    await sheet(mixer.page).getByRole('button', { name: 'Import', exact: true }).tap();
    await mixer.page.locator('main[data-tab="phones"]').waitFor();
    await mixer.waitSaved();
    expect(await ids(mixer, day)).toEqual(await ids(other, day));
  });

  test('and shows the phone that reads everything, with nothing on it to change', async () => {
    const changes = (page: Page) =>
      page.locator('main').locator('[aria-pressed], [type="checkbox"], .button, input:not([readonly])');
    const shown = async ({ page }: Stage, tab: string) => {
      await toPage(page, tab);
      await page.locator('main .row, main input').first().waitFor();
      return changes(page).filter({ visible: true }).count();
    };
    for (const tab of ['plan', 'radio']) {
      expect(await shown(other, tab), tab).toBeGreaterThan(0);
      expect(await shown(mixer, tab), tab).toBe(0);
    }
  });
});
