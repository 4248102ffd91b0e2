import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { openStage } from '../browser/harness.ts';
import { sharedChromium } from '../browser/harness-browsers.ts';
import {
  fitting,
  LOOKS,
  nextPaint,
  resize,
  SIZES,
  sizeName,
  USUAL,
  wear,
} from '../browser/looks-and-sizes.ts';
import { eachPlace } from '../browser/places.ts';
import { contactSheet, type Picture } from './contact-sheet.ts';

/** `now › ^note 2 take` as the name of a file. */
const fileName = (place: string): string =>
  place
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();

async function shoot(page: Page, session: CDPSession): Promise<Picture[]> {
  const pictures: Picture[] = [];
  for (const size of SIZES) {
    await resize(session, size);
    for (const look of LOOKS) {
      await wear(page, look);
      await nextPaint(page);
      const { data } = await session.send('Page.captureScreenshot', { format: 'png' });
      pictures.push({ size, look, png: Buffer.from(data, 'base64') });
    }
  }
  await resize(session, USUAL);
  return pictures;
}

/**
 * Takes every place of the walk at each size in each look, and a sheet of each place with all of them; with a filter
 * only the places in whose name it is. Gives the names of those that were taken.
 */
export async function takeEveryPlace(folder: string, filter = ''): Promise<readonly string[]> {
  if (!filter) rmSync(folder, { recursive: true, force: true });
  const stage = await openStage({ clock: '2026-11-20T03:10:00Z' });
  const taken: string[] = [];
  try {
    const { page } = stage;
    const session = await fitting(page);
    const browser = await sharedChromium();
    await eachPlace(stage, async (place) => {
      if (!place.toLowerCase().includes(filter.toLowerCase())) return;
      const name = fileName(place);
      const pictures = await shoot(page, session);
      mkdirSync(join(folder, name), { recursive: true });
      for (const { size, look, png } of pictures)
        writeFileSync(join(folder, name, `${sizeName(size)} ${look}.png`), png);
      writeFileSync(join(folder, `${name}.png`), await contactSheet(browser, place, pictures));
      taken.push(place);
    });
  } finally {
    await stage.close();
  }
  return taken;
}
