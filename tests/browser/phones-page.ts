import type { Page } from 'playwright-core';
import { tap } from './tapping.ts';

/** Goes to a page of the open day that is no tab, or to any, by its address. */
export async function toPage(page: Page, name: string): Promise<void> {
  await page.evaluate((next) => {
    location.hash = location.hash.replace(/\w+$/, next);
  }, name);
  await page.locator(`main[data-tab="${name}"]`).waitFor();
}

/** Pastes a code where a camera would read it. */
export async function pasteCode(page: Page, code: string): Promise<void> {
  await page.getByLabel('Or paste it').fill(code);
  await tap(page, 'Use the pasted code');
}

/** The text of the code that the open sheet shows. */
export async function shownCode(page: Page): Promise<string> {
  await page.getByText('The code as text').tap();
  return (await page.locator('.live-code').textContent()) ?? '';
}
