import type { Page } from 'playwright-core';
import { sampleText } from '../../sample-days/load.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import type { Stage } from './harness.ts';
import { foldStored, openDayId, spoilStored, storedFacts } from './stored-facts.ts';

/** A page of the sample day, and the buttons whose sheets (or other state) are looked at too. */
interface Place {
  readonly tab: string;
  readonly opens: readonly RegExp[];
}

const PLACES: readonly Place[] = [
  {
    tab: 'now',
    opens: [
      /^About this day/,
      /^Sync to recorder/,
      /sources/,
      /Wiktoria/,
      /Zuzu, Otto/,
      /^Slate/,
      /^note 2 take/,
    ],
  },
  { tab: 'cast', opens: [/^order$/, /^Who is needed$/, /^Add$/, /^Call sheet$/, /Emil/, /^Boom Jurrien/] },
  {
    tab: 'rig',
    opens: [
      /^Recorders/,
      /^Patch several$/,
      /^Tune several$/,
      /^Add$/,
      /^Inputs/,
      /^Tracks/,
      /^Receivers/,
      /^Selectors/,
      /^Packs/,
    ],
  },
  { tab: 'scenes', opens: [/^Add$/, /^Call sheet$/] },
  { tab: 'line', opens: [/45B\/2/, /A3 muted/] },
  {
    tab: 'wrap',
    opens: [/^Hand over$/, /^Paper, columns/, /^Table \(CSV\)$/, /^Start the next day/, /^Track 16/],
  },
  { tab: 'plan', opens: [/^what to avoid$/, /^Pin Wiktoria$/, /^What if Emil/] },
  { tab: 'radio', opens: [/^A1: find/, /^Minimum spacing/, /^Where packs tune/, /^Spectrum/] },
  {
    tab: 'upkeep',
    opens: [
      /^Hours/,
      /^Batteries/,
      /^Timecode/,
      /^Compare by ear$/,
      /^Media/,
      /^The far box/,
      /^Cart power/,
      /^Add device$/,
    ],
  },
  { tab: 'listeners', opens: [/^Somebody else$/] },
  { tab: 'card', opens: [] },
  { tab: 'picture', opens: [/^Larger$/, /^Bag$/] },
  { tab: 'unit', opens: [/^Elsewhere$/] },
  { tab: 'phones', opens: [] },
];

/** Opens the sample day from the list of days and waits for its first screen. */
export async function openSampleDay({ page }: Stage): Promise<void> {
  await page.getByRole('button', { name: 'Sample day' }).tap();
  await page.locator('.dock').waitFor();
}

const PERFORMERS = 16;

/** Puts so many performers into the sample day that its lists are long, past the app. */
async function fillTheCast(stage: Stage): Promise<void> {
  const { page } = stage;
  await stage.waitSaved();
  const day = openDayId(page);
  const { voices, lastAt } = foldStored(day, await storedFacts(page, day));
  const there = [...voices.values()].filter(({ kind }) => kind === 'performer').length;
  const drafts = Array.from({ length: PERFORMERS - there }, (_, at) => ({
    kind: 'voice-described' as const,
    voice: `crowd-${at}`,
    fields: { kind: 'performer' as const, part: `Harbourmaster Quintessa of the ${at + 1}. Landing` },
  }));
  const { next } = idSource('walker00000');
  await spoilStored(page, stampFacts(drafts, { day, at: lastAt, zone: 60, nextId: next }), 'change');
  await stage.reload();
  await page.locator('.dock').waitFor();
}

/**
 * Goes through every page of the app and its main sheets, and calls `look` at each with its name. Returns the names, so
 * that a test can say how many it saw.
 */
export async function eachPlace(stage: Stage, look: (name: string) => Promise<void>): Promise<string[]> {
  const { page } = stage;
  const names: string[] = [];
  const see = async (name: string): Promise<void> => {
    names.push(name);
    await look(name);
  };
  // An empty page would be asked, and pictured, instead.
  await page.getByText('Sample day', { exact: true }).waitFor();
  await see('days, none yet');
  for (const name of [/^New day$/, /^Import day file$/]) await opened(stage, '#/', name, see);
  await seeTheDoor(stage, see);
  await goTo(page, '#/day/none/now');
  await see('a day that is none');
  await goTo(page, '#/help');
  await see('the words');
  await goTo(page, '#/settings');
  await see('settings');
  await opened(stage, '#/settings', /^Licences$/, see);
  await goTo(page, '#/');
  await openSampleDay(stage);
  await fillTheCast(stage);
  const day = /day\/([^/]+)/.exec(page.url())?.[1];
  await goTo(page, '#/');
  await see('days, one');
  await opened(stage, '#/', /^More about/, see);
  for (const { tab, opens } of PLACES) {
    const hash = `#/day/${day}/${tab}`;
    await goTo(page, hash);
    await see(tab);
    for (const name of opens) await opened(stage, hash, name, see);
  }
  await goTo(page, `#/day/${day}/now`);
  await page.getByRole('button', { name: 'Roll', exact: true }).tap();
  await atRest(page);
  await see('now, rolling');
  await page.getByRole('button', { name: 'Cut', exact: true }).tap();
  await seeEmptyDay(stage, see);
  return names;
}

/** What a day file would change, before it is imported: a damaged one of a day that is not there. */
async function seeTheDoor({ page }: Stage, see: (name: string) => Promise<void>): Promise<void> {
  await goTo(page, '#/');
  await page.getByRole('button', { name: 'Import day file' }).tap();
  await page.getByLabel('Or paste the text').fill(sampleText('small').replace('Ledger', 'Lodger'));
  await page.getByRole('button', { name: 'Import what can be read' }).waitFor();
  await atRest(page);
  await see('days › what it would change');
  await closeSheets(page);
}

/** A day with nothing on it: what each page says before there is anything to show. */
async function seeEmptyDay({ page }: Stage, see: (name: string) => Promise<void>): Promise<void> {
  await goTo(page, '#/');
  await page.getByRole('button', { name: 'New day', exact: true }).tap();
  await page.getByRole('button', { name: 'Start the day' }).tap();
  await page.getByRole('heading', { name: 'Set up the rig' }).waitFor();
  const day = /day\/([^/]+)/.exec(page.url())?.[1];
  for (const { tab } of PLACES) {
    await goTo(page, `#/day/${day}/${tab}`);
    await see(`${tab}, nothing yet`);
  }
}

/** Opens what one button opens, looks, and leaves the page as it was before. */
async function opened(
  { page }: Stage,
  hash: string,
  name: RegExp,
  see: (name: string) => Promise<void>,
): Promise<void> {
  await goTo(page, hash);
  await page.getByRole('button', { name }).first().tap();
  await atRest(page);
  await see(`${hash.split('/').at(-1) || 'days'} › ${name.source}`);
  await closeSheets(page);
  // Not every button opens a sheet; what another one opened is gone when its screen is left.
  await goTo(page, '#/help');
}

async function closeSheets(page: Page): Promise<void> {
  const sheets = page.locator('dialog[open]');
  while ((await sheets.count()) > 0) {
    const on = await sheets.last().elementHandle();
    await page.keyboard.press('Escape');
    await on?.waitForElementState('hidden');
  }
}

async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await page.locator('main:not([aria-busy])').first().waitFor();
  await atRest(page);
}

/** Two frames after the last animation: what is measured stands still. */
async function atRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const frame = (): Promise<unknown> => new Promise((done) => requestAnimationFrame(done));
    await frame();
    await frame();
    await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
    await frame();
  });
}
