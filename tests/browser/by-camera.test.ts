import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { onStage, openStage, type Stage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, tap } from './tapping.ts';

const folder = mkdtempSync(join(tmpdir(), 'rollbook-camera-'));
/** What each phone's camera will see. */
const [ofGiver, ofReader] = ['giver', 'reader'].map((name) => join(folder, `${name}.mjpeg`)) as [
  string,
  string,
];
/** The browser plays 30 pictures of the file a second: each code stands for four of them. */
const REPEATS = 4;

const film = (path: string, pictures: readonly Buffer[]): void =>
  writeFileSync(path, Buffer.concat(pictures.flatMap((picture) => Array<Buffer>(REPEATS).fill(picture))));

type Spoil = 'clean' | 'blurred' | 'missing';

/** The code on the screen of a phone, as a picture. */
async function pictured(page: Page, spoil: Spoil = 'clean'): Promise<Buffer> {
  const code = page.locator('.shown-code');
  await code.evaluate((shown, how) => {
    const { style } = shown as SVGElement;
    style.filter = how === 'blurred' ? 'blur(8px)' : how === 'missing' ? 'brightness(0)' : '';
  }, spoil);
  // The code changes eight times a second, and the picture is of whichever is there.
  return code.screenshot({ type: 'jpeg', quality: 80, animations: 'disabled' });
}

/** Every third picture is blurred or missing, by turns. */
async function filmed(page: Page, count: number): Promise<Buffer[]> {
  const pictures: Buffer[] = [];
  for (let at = 0; at < count; at += 1)
    pictures.push(await pictured(page, at % 3 < 2 ? 'clean' : at % 2 ? 'blurred' : 'missing'));
  return pictures;
}

const toPhones = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    location.hash = location.hash.replace(/\w+$/, 'phones');
  });
  await page.locator('main[data-tab="phones"]').waitFor();
};

const sheet = (page: Page) => page.getByRole('dialog');

let giver: Stage;
let reader: Stage;
beforeAll(async () => {
  [giver, reader] = await Promise.all([openStage({ camera: ofGiver }), openStage({ camera: ofReader })]);
});
afterAll(async () => {
  await Promise.all([giver, reader].map((stage) => stage?.close()));
  rmSync(folder, { recursive: true, force: true });
});

/** The reader shows what it has, the giver reads that and shows codes, and the reader films them. */
async function fromGiver(pictures: number): Promise<string> {
  await tap(giver.page, 'Give to another phone');
  await sheet(giver.page)
    .getByText(/entr(y|ies) in \d+ codes?$/)
    .waitFor();
  const offered = (await sheet(giver.page).getByRole('heading').textContent()) ?? '';
  film(ofReader, await filmed(giver.page, pictures));
  await tap(giver.page, 'Done');
  await tap(reader.page, 'It shows codes now');
  await reader.page.getByRole('dialog', { name: 'Import this?' }).waitFor();
  return offered;
}

describe('a day goes from screen to camera', () => {
  test('whole to a phone that does not have it, with every third picture blurred or missing', async () => {
    await giver.page.evaluate(() => {
      location.hash = '#/settings';
    });
    await giver.page.getByLabel(/^Name/).fill('Mira Holm');
    await giver.page.getByLabel('Job').fill('Sound mixer');
    await giver.page.evaluate(() => {
      location.hash = '#/';
    });
    await tap(giver.page, 'Sample day');
    await giver.page.locator('.dock').waitFor();
    await giver.waitSaved();
    await toPhones(giver.page);
    // The reader has no day: it asks for any.
    await reader.page.evaluate(() => {
      location.hash = '#/get';
    });
    await reader.page.locator('.shown-code').waitFor();
    film(ofGiver, [await pictured(reader.page)]);
    const offered = await fromGiver(60);
    expect(offered).toMatch(/^\d+ entries in \d+ codes$/);
    await sheet(reader.page)
      .getByText(/sent by Mira Holm/)
      .waitFor();
    const day = openDayId(giver.page);
    // Nothing is imported before it was looked at.
    expect(await storedFacts(reader.page, day)).toEqual([]);
    await sheet(reader.page).getByRole('button', { name: 'Import', exact: true }).tap();
    await reader.page.locator('main[data-tab="phones"]').waitFor();
    await reader.waitSaved();
    const ids = async (stage: Stage): Promise<string[]> =>
      ((await storedFacts(stage.page, day)) as Envelope[]).map(({ id }) => id).sort();
    expect(await ids(reader)).toEqual(await ids(giver));
    await reader.page.getByText('Mira Holm, sound mixer').waitFor();
  });

  test('what was added since in the night look, in one or two codes', async () => {
    await tap(reader.page, 'Get from another phone');
    await reader.page.locator('.shown-code').waitFor();
    film(ofGiver, [await pictured(reader.page)]);
    await giver.page.evaluate(() => {
      location.hash = location.hash.replace(/\w+$/, 'now');
    });
    await giver.page.locator('.dock').waitFor();
    await takeOne(giver.page);
    await takeOne(giver.page);
    await tap(giver.page, /^Night/);
    await giver.waitSaved();
    await toPhones(giver.page);
    const offered = await fromGiver(12);
    expect(offered).toMatch(/ in (1 code|2 codes)$/);
    await sheet(reader.page).getByRole('button', { name: 'Import', exact: true }).tap();
    await reader.page.locator('main[data-tab="phones"]').waitFor();
    await reader.waitSaved();
    const day = openDayId(giver.page);
    const count = async (stage: Stage) => (await storedFacts(stage.page, day)).length;
    await expect.poll(() => count(reader)).toBe(await count(giver));
  });
});

test('where there is no camera it is said in words, and the whole day can still be given', async () => {
  await onStage({}, async ({ page }) => {
    await startDay(page);
    await toPhones(page);
    await tap(page, 'Give to another phone');
    await sheet(page)
      .getByText(/camera.*(s|S)end the day file instead\.$/)
      .waitFor();
    await tap(page, 'Give the whole day');
    await page.locator('.shown-code').waitFor();
  });
});
