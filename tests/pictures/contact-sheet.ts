import type { Browser } from 'playwright-core';
import { LOOKS, type Look, SIZES, type Size, sizeName } from '../browser/looks-and-sizes.ts';

export interface Picture {
  readonly size: Size;
  readonly look: Look;
  readonly png: Buffer;
}

/** How large a picture is on the sheet. */
const SCALE = 0.5;

/** All pictures of one place on one: a row for each size, a column for each look. */
export async function contactSheet(
  browser: Browser,
  place: string,
  pictures: readonly Picture[],
): Promise<Buffer> {
  const cell = (size: Size, look: Look): string => {
    const { png } = pictures.find((one) => one.size === size && one.look === look)!;
    const source = `data:image/png;base64,${png.toString('base64')}`;
    return `<figure><img width="${size.width * SCALE}" src="${source}"><figcaption>${sizeName(size)}, ${look}</figcaption></figure>`;
  };
  const rows = SIZES.map((size) => `<div>${LOOKS.map((look) => cell(size, look)).join('')}</div>`);
  const page = await browser.newPage({ viewport: { width: 400, height: 400 } });
  await page.setContent(`<!doctype html><style>
    body { margin: 0; padding: 12px; width: max-content; background: #777; font: 12px sans-serif }
    h1 { margin: 0 0 8px; font-size: 16px }
    div { display: flex; gap: 12px; margin-bottom: 12px }
    figure { margin: 0 } img { display: block }
  </style><h1></h1>${rows.join('')}`);
  await page.locator('h1').evaluate((one, name) => {
    one.textContent = name;
  }, place);
  const sheet = await page.locator('body').screenshot();
  await page.close();
  return sheet;
}
