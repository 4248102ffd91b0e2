import type { CDPSession, Page } from 'playwright-core';

export const LOOKS = ['light', 'sunlight', 'dark', 'dim'] as const;
export type Look = (typeof LOOKS)[number];

/** A small phone, a usual one, a tablet, and a phone on its side. */
export const SIZES = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
  { width: 844, height: 390 },
] as const;
export type Size = (typeof SIZES)[number];

/** The size that the walk goes in from place to place. */
export const USUAL = SIZES[1];

export const sizeName = ({ width, height }: Size): string => `${width} x ${height}`;

/** Gives the page as it stands another look, as the choice of a look does. */
export const wear = (page: Page, look: Look): Promise<void> =>
  page.evaluate((to) => {
    document.documentElement.dataset.look = to;
  }, look);

/** For the two below. */
export async function fitting(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send('Page.enable');
  return session;
}

/** Sets the size of the screen and of its text by the protocol: the page is not loaded anew. */
export async function resize(session: CDPSession, size: Size, percent = 100): Promise<void> {
  const fontSizes = { standard: (16 * percent) / 100, fixed: (13 * percent) / 100 };
  await session.send('Page.setFontSizes', { fontSizes });
  await session.send('Emulation.setDeviceMetricsOverride', { ...size, deviceScaleFactor: 1, mobile: true });
  // A page that was too wide at one size is zoomed out there, and would stay so.
  await session.send('Emulation.resetPageScaleFactor');
}

export const nextPaint = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
