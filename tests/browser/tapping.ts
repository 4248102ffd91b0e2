import type { Locator, Page } from 'playwright-core';

/** Taps the first button with this name. */
export const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).first().tap();

/** Goes to a tab of the open day. Its screen comes behind the mark that answers the tap. */
export async function tab(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name, exact: true }).tap();
  await page.locator(`main[data-tab="${name.toLowerCase()}"]`).waitFor();
}

/** Starts a day from the list of days and goes to its Now screen. */
export async function startDay(page: Page, production = 'Harbour Lights'): Promise<void> {
  await tap(page, 'New day');
  await page.getByLabel('Production', { exact: true }).first().fill(production);
  await tap(page, 'Start the day');
  await tab(page, 'Now');
  await page.locator('.dock').waitFor();
}

/** One whole take by two taps: Roll, Cut. */
export async function takeOne(page: Page): Promise<void> {
  await tap(page, /^Roll$/);
  await tap(page, /^Cut$/);
}

/** The takes that the Line screen counts. */
export async function takesOnTheLine(page: Page): Promise<number> {
  await tab(page, 'Line');
  const head = await page.locator('.line-head').textContent();
  return Number(/(\d+|one|no) takes?/.exec(head ?? '')?.[1] ?? Number.NaN);
}

/**
 * Puts a text where somebody pastes it. The driver's own way types it, which takes seconds for a whole day file: each
 * line break is an edit of its own.
 */
export const paste = (field: Locator, text: string): Promise<void> =>
  field.evaluate((one, pasted) => {
    (one as HTMLTextAreaElement).value = pasted;
    one.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertFromPaste' }));
  }, text);
