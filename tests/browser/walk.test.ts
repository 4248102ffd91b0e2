import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from './axe-findings.ts';
import { openStage, type Stage } from './harness.ts';
import { type LayoutFaults, layoutFaults } from './layout-faults.ts';
import { fitting, LOOKS, nextPaint, resize, SIZES, sizeName, USUAL, wear } from './looks-and-sizes.ts';
import { eachPlace } from './places.ts';

// One walk through all places for everything that is asked of each: going there is most of the work.

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** What was found wrong, and where each was seen: what is on every place is one line. */
class Findings {
  readonly #places = new Map<string, string[]>();
  note(place: string, found: readonly string[]): void {
    for (const one of found) this.#places.set(one, [...(this.#places.get(one) ?? []), place]);
  }
  get text(): string {
    return [...this.#places]
      .map(
        ([one, places]) =>
          `${one} [${places[0]}${places.length > 1 ? `, and ${places.length - 1} more` : ''}]`,
      )
      .join('\n');
  }
}

const found = {
  axe: new Findings(),
  small: new Findings(),
  outside: new Findings(),
  clipped: new Findings(),
  thrownUnder: new Findings(),
  outsideAt200: new Findings(),
};

/** A look only changes colours, so all rules are run in the first look, and contrast in each. */
async function lookWithAxe(page: Page, place: string): Promise<void> {
  for (const look of LOOKS) {
    await wear(page, look);
    const rules = look === LOOKS[0] ? LEVELS : ['color-contrast'];
    found.axe.note(`${place}, ${look}`, await axeFindings(page, rules));
  }
}

const textSize = (page: Page): Promise<number> =>
  page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));

async function measure(page: Page, session: CDPSession, place: string): Promise<void> {
  for (const size of SIZES) {
    const where = `${place}, ${sizeName(size)}`;
    if (size.width < 400) {
      await resize(session, size, 200);
      await nextPaint(page);
      expect(await textSize(page), where).toBe(32);
      found.outsideAt200.note(where, (await layoutFaults(page)).outside);
    }
    await resize(session, size);
    await nextPaint(page);
    const faults = await layoutFaults(page);
    for (const kind of Object.keys(faults) as (keyof LayoutFaults)[]) found[kind].note(where, faults[kind]);
  }
  await resize(session, USUAL);
}

describe('every page and its main sheets, with no signal and sixteen performers', () => {
  let stage: Stage;
  let seen: readonly string[] = [];
  beforeAll(async () => {
    stage = await openStage({ clock: '2026-11-20T03:10:00Z', worker: true });
    await stage.loseSignal();
    const { page } = stage;
    const session = await fitting(page);
    seen = await eachPlace(stage, async (place) => {
      await lookWithAxe(page, place);
      await measure(page, session, place);
    });
  }, 400_000);
  afterAll(() => stage.close());

  test('are all seen', () => expect(seen.length).toBeGreaterThanOrEqual(58));

  test('keep WCAG 2.2 A and AA as far as axe-core can tell, and 1.4.3 Contrast in every look', () =>
    expect(found.axe.text).toBe(''));

  test('have targets that a thumb in the dark hits (2.5.8 Target Size)', () =>
    expect(found.small.text).toBe(''));

  test('have nothing outside the screen', () => expect(found.outside.text).toBe(''));

  test('have nothing outside the screen at 200 % (1.4.4 Resize Text, 1.4.10 Reflow)', () =>
    expect(found.outsideAt200.text).toBe(''));

  test('clip no text', () => expect(found.clipped.text).toBe(''));

  test('have figures beside their titles', () => expect(found.thrownUnder.text).toBe(''));
});
