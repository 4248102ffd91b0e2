import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Draft } from '../../src/facts/fact.ts';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { openStage, type Stage } from './harness.ts';
import { openSaid } from './said-day.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage({ clock: '2026-10-07T12:00:00Z', viewport: { width: 360, height: 640 } });
  const phone = speaker();
  const worn = (transmitter: string): Draft => ({ kind: 'transmitter-worn', transmitter, voice: 'ines' });
  phone.say(...SMALL_RIG, ...SMALL_CAST, worn('A1'), worn('A2'));
  phone.say({
    kind: 'mic-mounted',
    voice: 'ines',
    transmitter: 'A2',
    mic: { model: 'omni lavalier', place: 'hair' },
    carried: true,
  });
  await openSaid(stage, phone);
});
afterAll(() => stage.close());

const names = () => stage.page.locator('.rows .row strong').allTextContents();

describe('the mic on a body', () => {
  test('is entered in taps from the first screen, and tells two on one performer apart', async () => {
    const { page, tap, inSheet, closed } = hands(stage);
    await expect.poll(names).toEqual(expect.arrayContaining(['Ines A1', 'Ines hair']));
    await tap(/^3 .*Ines/);
    await inSheet('Mic');
    const sheet = page().getByRole('dialog', { name: 'Ines, mic on A1' });
    await sheet.getByRole('button', { name: 'As on A2 yesterday: omni lavalier, hair' }).waitFor();
    await sheet.getByRole('button', { name: 'chest', exact: true }).tap();
    await sheet.getByRole('button', { name: 'black', exact: true }).tap();
    await sheet.getByText('black, chest', { exact: true }).waitFor();
    await sheet.getByRole('button', { name: 'black', exact: true }).tap();
    await sheet.getByText('chest', { exact: true }).first().waitFor();
    expect(await sheet.getByRole('button', { name: 'black', exact: true }).getAttribute('aria-pressed')).toBe(
      'false',
    );
    await sheet.getByRole('button', { name: 'Type something else' }).tap();
    await sheet.getByLabel('Rubs on').last().fill('brooch');
    await sheet.getByRole('button', { name: 'Save' }).tap();
    await sheet.getByText('chest, rubs on brooch').waitFor();
    await page().keyboard.press('Escape');
    await page().keyboard.press('Escape');
    await closed();
    await expect.poll(names).toEqual(expect.arrayContaining(['Ines chest', 'Ines hair']));
  });

  test('that came over from yesterday is confirmed in one tap', async () => {
    const { page, tap, tab, inSheet, closed } = hands(stage);
    await tab('Cast');
    await tap(/Ines/);
    const sheet = page().getByRole('dialog');
    await sheet.getByRole('button', { name: /Mic on A2.*as yesterday/ }).waitFor();
    await inSheet('Same as yesterday');
    await sheet.getByText('as yesterday', { exact: true }).waitFor({ state: 'detached' });
    await page().keyboard.press('Escape');
    await closed();
  });
});
