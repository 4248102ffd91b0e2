import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { openStage, type Stage } from './harness.ts';
import { openSaid } from './said-day.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage({ clock: '2026-10-07T07:10:00Z', viewport: { width: 360, height: 640 } });
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'part-described', part: 'village', fields: { type: 'send', name: 'Village' } });
  await openSaid(stage, phone);
});
afterAll(() => stage?.close());

const rows = async (): Promise<string[]> =>
  (await stage.page.locator('.device-row').allInnerTexts()).map((text) => text.replaceAll(/\s+/g, ' '));

describe('who hears', () => {
  test('is entered from Rig without typing, and is on the wiring sheet', async () => {
    const { page, tap, inSheet, tab, closed } = hands(stage);
    await tab('Rig');
    await page()
      .getByRole('link', { name: /^Listeners/ })
      .tap();
    await tap('Director');
    await tap('Boom operator');
    await tap('Video village');
    await expect
      .poll(rows)
      .toEqual([
        'Director IFB 1 · hears Mix · not marked fresh Returned',
        'Boom operator IFB 2 · hears own boom · not marked fresh Returned',
        'Video village IFB 3 · hears Mix · not marked fresh Returned',
      ]);
    await tap(/^Video village IFB/);
    await inSheet(/^Village$/);
    await inSheet(/^4$/);
    await page().getByRole('dialog').getByText('IFB 3 · channel 4 · hears Village').waitFor();
    await inSheet('Close');
    await closed();
    await tap('Fresh batteries in all 3');
    await expect
      .poll(async () => (await rows())[2])
      .toMatch(/^Video village IFB 3 · channel 4 · hears Village · fresh \d\d:10 Returned$/);

    const both = page().getByText('Director and Boom operator both have IFB 1.');
    await tap(/^Boom operator IFB/);
    await inSheet(/^IFB 1$/);
    await page().getByRole('dialog').getByText('Director and Boom operator both have IFB 1.').waitFor();
    await inSheet('Close');
    await closed();
    await both.waitFor();
    await tap(/^Boom operator IFB/);
    await inSheet(/^IFB 2$/);
    await inSheet('Close');
    await closed();
    await both.waitFor({ state: 'detached' });

    await page().getByRole('navigation', { name: 'Day' }).getByRole('link', { name: 'Rig' }).tap();
    await page()
      .getByRole('link', { name: /^Listeners.*3 handed out/ })
      .waitFor();
    await page()
      .getByRole('link', { name: /^Upkeep/ })
      .tap();
    await tap('Wiring sheet');
    const onSheet = page().getByRole('region', { name: 'Listeners' }).getByRole('listitem');
    await expect
      .poll(() => onSheet.allInnerTexts())
      .toEqual([
        'Director IFB 1 · hears Mix',
        'Boom operator IFB 2 · hears own boom',
        'Video village IFB 3 · channel 4 · hears Village',
      ]);
  });

  test('has its batteries in Upkeep like a pack, with a battery life for all receivers', async () => {
    const { page, tap, inSheet, tab, closed, fill } = hands(stage);
    await stage.setClock('2026-10-07T12:10:00Z');
    await tab('Rig');
    await page()
      .getByRole('link', { name: /^Upkeep/ })
      .tap();
    await tap(/^Batteries/);
    await tap(/^IFB 1 of Director/);
    await fill('Battery life, hours', '6');
    expect(await page().getByLabel('Clock tolerance, ppm').count()).toBe(0);
    await inSheet('Save for all 3 receivers');
    await closed();
    const due = page().getByRole('list', { name: 'What is due' }).getByRole('listitem');
    await expect
      .poll(() => due.first().textContent())
      .toMatch(/IFB 1 of Director.*IFB 3 of Video village.*battery/);
    expect(await due.first().getAttribute('data-action')).toBe('now');
    await due
      .first()
      .getByRole('button', { name: /^Fresh/ })
      .tap();
    await expect.poll(() => due.first().getAttribute('data-action')).toBe('later');
  });

  test('gives the receiver back at wrap in one tap each, with Undo', async () => {
    const { page, tab } = hands(stage);
    await tab('Wrap');
    const still = (title: string) => page().getByRole('region', { name: title });
    const back = (name: string) =>
      page()
        .getByRole('button', { name: `${name}: returned` })
        .tap();
    await still('Still out: 3 receivers').waitFor();
    await back('Director');
    await back('Boom operator');
    await still('Still out: 1 receiver').getByText('Video village').waitFor();
    await back('Video village');
    await still('No listener has a receiver').waitFor();
    await page().getByRole('button', { name: 'Undo', exact: true }).tap();
    await still('Still out: 1 receiver').getByText('Video village').waitFor();
  });
});
