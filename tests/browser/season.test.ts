import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { speaker } from '../day/say.ts';
import { SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { openStage, type Stage } from './harness.ts';
import { paste, startDay } from './tapping.ts';

// All names are invented.

const performer = (voice: string, number: string, part: string, person: string): Draft => ({
  kind: 'voice-described',
  voice,
  fields: { part, person, number },
});
const mic = (voice: string, place: string): Draft => ({
  kind: 'mic-mounted',
  voice,
  transmitter: 'A1',
  mic: { model: 'omni lavalier', place },
});

const INES = [performer('i', '1', 'Ines', 'Anna Berg'), mic('i', 'collar')];

/** Three days of a production, as another window or phone left them. */
const DAYS: readonly (readonly [date: string, production: string, ...said: Draft[]])[] = [
  ['2026-03-09', 'Harbour Lights', ...INES, performer('n', '7', 'Nurse', 'Lea Holm')],
  ['2026-03-12', 'Harbour Lights', performer('g', '5', 'Guard', 'Odd Moe'), mic('g', 'chest')],
  ['2026-03-12', 'Salt Road', performer('c', '2', 'Clerk', 'Bo Ek')],
];

let stage: Stage;
beforeAll(async () => {
  stage = await openStage({ clock: '2026-03-13T06:00:00Z', viewport: { width: 360, height: 640 } });
  const { page, waitSaved } = stage;
  for (const [at, [date, production, ...said]] of DAYS.entries()) {
    const { facts } = speakerOf(
      at,
      { kind: 'day-described', fields: { production, date } },
      ...SMALL_RIG,
      ...said,
    );
    await page.getByRole('button', { name: 'Import day file' }).tap();
    await paste(page.getByLabel('Or paste the text'), writeDayFile(`day-${at}`, production, facts));
    await page.getByRole('button', { name: 'Import what was pasted' }).tap();
    await page.locator('.dock').waitFor();
    await waitSaved();
    await page.evaluate(() => {
      location.hash = '#/';
    });
  }
  await startDay(page);
});
afterAll(() => stage.close());

function speakerOf(at: number, ...drafts: Draft[]) {
  const phone = speaker('phonea', Date.UTC(2026, 2, 9, 7));
  phone.say(...drafts);
  return { facts: phone.facts.map((fact) => ({ ...fact, day: `day-${at}` })) };
}

const goToPage = (name: string): Promise<void> =>
  stage.page.evaluate((to) => {
    location.hash = location.hash.replace(/\w+$/, to);
  }, name);

describe('the next day of a production', () => {
  test('knows who the numbers of a call sheet are, and asks where the sheet names somebody else', async () => {
    const { page, tap, inSheet, closed } = hands(stage);
    await goToPage('scenes');
    await tap('Call sheet');
    const text = page().getByLabel('Call sheet text');
    await paste(text, '46 INT. KITCHEN - DAY 2 3/8 1, 2, 5');
    const read = page().getByRole('list', { name: 'Read', exact: true }).getByRole('listitem');
    await expect
      .poll(() => read.allTextContents())
      .toEqual([
        expect.stringMatching(/1.*Ines.*Anna Berg · part and performer as on 9 March.*new/),
        expect.stringMatching(/5.*Guard.*Odd Moe · part and performer as on 12 March.*new/),
      ]);
    await paste(text, '46 INT. KITCHEN - DAY 2 3/8 1, 2, 5\n\nCAST\n1. INES - Mia Lund');
    const asked = page().getByRole('group', { name: 'Who plays Ines today?' });
    await asked.getByRole('button', { name: 'Anna Berg, as on 9 March' }).waitFor();
    await asked.getByRole('button', { name: 'Mia Lund, as on the sheet' }).tap();
    await read.filter({ hasText: 'Guard' }).getByRole('button').tap();
    await page().getByLabel('Performer', { exact: true }).fill('Per Dahl');
    await inSheet('Use this');
    await read.filter({ hasText: /Guard.*Per Dahl/ }).waitFor();
    await inSheet('Add 2 to the cast and 1 scene');
    await closed();
    const scene = page().getByRole('list', { name: 'Scenes in the order to shoot' });
    await expect.poll(() => scene.textContent()).toMatch(/cast 1, 5 · not in the cast: 2/);
  });

  test('offers whose number it was where somebody is added by hand', async () => {
    const { page, tap, inSheet, closed, fill } = hands(stage);
    await goToPage('cast');
    await tap('Add');
    await fill('Cast number', '7');
    await inSheet('Nurse, Lea Holm, as on 9 March');
    await inSheet('Add');
    await closed();
    await page().locator('.cast-rows .row').filter({ hasText: 'Lea Holm' }).waitFor();
  });

  test('proposes the mic and its place, in one tap', async () => {
    const { page, tap, tab, inSheet, closed } = hands(stage);
    await goToPage('rig');
    await tap(/^Bag, 16 tracks/);
    await tab('Cast');
    await tap(/Guard/);
    await inSheet(/^TX 1|^A1|^Tx 1/);
    await tap(/Guard/);
    const sheet = page().getByRole('dialog');
    await sheet.getByText('not entered · on 12 March: omni lavalier, chest').waitFor();
    await inSheet('Same as on 12 March');
    await sheet.getByText('omni lavalier, chest', { exact: true }).waitFor();
    await page().keyboard.press('Escape');
    await closed();
  });
});
