import { jetstreamManager } from '@nats-io/jetstream';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { asKeeper } from '../../.ci/hub/streams.mjs';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { type LogNode, PASSWORDS, startNode } from '../live/servers.ts';
import { openStage, type Stage } from './harness.ts';
import { pasteCode, shownCode, toPage } from './phones-page.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, tap } from './tapping.ts';

/** A connection that ends is nothing that the page did wrong. */
const FORGIVEN = /WebSocket connection to|ERR_CONNECTION/;

let log: LogNode;
let mixer: Stage;
let boom: Stage;
beforeAll(async () => {
  log = await startNode();
  const options = { live: Number(new URL(log.websocket).port), forgives: FORGIVEN };
  [mixer, boom] = await Promise.all([openStage(options), openStage(options)]);
});
afterAll(async () => {
  await Promise.all([mixer, boom].map((stage) => stage?.close()));
  await log?.remove();
});

const headSays = (page: Page, word: string) =>
  page.locator('.head-facts').filter({ hasText: word }).waitFor();
const ids = async ({ page }: Stage): Promise<string[]> =>
  ((await storedFacts(page, openDayId(mixer.page))) as Envelope[]).map(({ id }) => id).sort();
const bothHave = async (least: number): Promise<void> => {
  await expect.poll(async () => (await ids(boom)).length).toBeGreaterThanOrEqual(least);
  await expect
    .poll(async () => [await ids(boom), await ids(mixer)])
    .toSatisfy(([one, other]: string[][]) => `${one}` === `${other}`);
};

describe('a live day on two phones', () => {
  test('is never spoken of before it is put live', async () => {
    await startDay(mixer.page);
    await takeOne(mixer.page);
    expect(await mixer.page.locator('.head-facts').textContent()).not.toMatch(/live|alone|catching/);
  });

  test('is put live by a pasted code, and refuses what is no code', async () => {
    const { page } = mixer;
    await toPage(page, 'phones');
    await tap(page, 'Go live');
    await pasteCode(page, 'rollbook-live //elsewhere.example/live phone word');
    await page.getByText('That is no live code.').waitFor();
    await pasteCode(page, `rollbook-live /live phone ${PASSWORDS.HUB_PHONE}`);
    await headSays(page, 'live');
    await page.getByText('Live: everything entered here is on the server').waitFor();
  });

  test('shows nothing of a flood on the log but how much was refused, and why', async () => {
    const { page } = mixer;
    const keeper = await asKeeper(log.websocket, PASSWORDS.HUB_KEEPER);
    const manager = await jetstreamManager(keeper, { checkAPI: false });
    const { state } = await manager.streams.info('SAID', { subjects_filter: '>' });
    const [subject] = Object.keys(state.subjects ?? {});
    const before = await ids(mixer);
    for (let nth = 0; nth < 500; nth += 1) keeper.publish(subject!, new Uint8Array(200).fill(99));
    await keeper.close();
    await page.getByText('500 messages refused. The last: It is no message of this app').waitFor();
    await headSays(page, 'live');
    expect(await ids(mixer)).toEqual(before);
    await toPage(page, 'line');
    await page.getByText('1 take, ').waitFor();
    await toPage(page, 'phones');
  });

  test('says in a second window of the phone how it stands, and goes on there when the first is closed', async () => {
    const { page } = mixer;
    const second = await mixer.openWindow(new URL(page.url()).hash.replace(/^/, '/'));
    await headSays(second, 'live');
    await second.getByText('Live: everything entered here is on the server').waitFor();
    // What the first window hears of the server, the second says too.
    await log.kill();
    await headSays(second, 'alone');
    await log.start();
    await Promise.all([headSays(page, 'live'), headSays(second, 'live')]);
    await page.evaluate(() => {
      location.hash = '#/';
    });
    await headSays(second, 'live');
    await second.getByText('Live: everything entered here is on the server').waitFor();
    await page.goBack();
    await headSays(page, 'live');
    await second.close();
    await headSays(page, 'live');
    await page.getByText('Live: everything entered here is on the server').waitFor();
  });

  test('comes whole to a phone that joins, which writes once the owner lets it', async () => {
    await tap(mixer.page, 'Let a phone join');
    await tap(mixer.page, 'Join to write');
    await mixer.page.getByText('Whoever photographs it can read this day').waitFor();
    const invitation = await shownCode(mixer.page);
    await tap(mixer.page, 'Close');
    await boom.page.evaluate(() => {
      location.hash = '#/get';
    });
    await tap(boom.page, 'Scan a join code');
    await pasteCode(boom.page, invitation);
    await headSays(boom.page, 'live');
    await bothHave(4);
    await toPage(boom.page, 'now');
    await takeOne(boom.page);
    await toPage(boom.page, 'phones');
    await boom.page.getByText(/has not let this phone write/).waitFor();
    await tap(boom.page, 'Ask to write');
    const spoken = await boom.page
      .locator('dialog strong')
      .filter({ hasText: /^[a-z]{5} [a-z]{5}$/ })
      .textContent();
    const asking = await shownCode(boom.page);
    await tap(boom.page, 'Close');
    const before = (await ids(mixer)).length;
    await tap(mixer.page, 'Scan a code');
    await pasteCode(mixer.page, asking);
    await mixer.page.getByText(spoken!).waitFor();
    await tap(mixer.page, 'Let in');
    await bothHave(before + 3);
  });

  test('is alone without a server, loses nothing, and goes on by itself', async () => {
    await log.kill();
    await Promise.all([headSays(mixer.page, 'alone'), headSays(boom.page, 'alone')]);
    const before = (await ids(mixer)).length;
    for (const { page } of [mixer, boom]) {
      await toPage(page, 'now');
      await takeOne(page);
    }
    await boom.reload();
    await log.start();
    await Promise.all([headSays(mixer.page, 'live'), headSays(boom.page, 'live')]);
    await bothHave(before + 4);
  });

  test('is only read by a phone that the owner removed', async () => {
    await toPage(mixer.page, 'phones');
    await tap(mixer.page, /A phone.*writes/);
    await tap(mixer.page, 'Remove');
    await toPage(boom.page, 'now');
    await boom.page.getByText('This phone reads the day and changes nothing.').waitFor();
    expect(await boom.page.getByRole('button', { name: /^Roll/ }).count()).toBe(0);
    await mixer.page.getByText('removed', { exact: true }).waitFor();
  });

  test('is read up to then only: what follows is sealed with a key that the removed phone does not get', async () => {
    const before = await ids(boom);
    await toPage(mixer.page, 'now');
    await takeOne(mixer.page);
    await mixer.waitSaved();
    await toPage(mixer.page, 'phones');
    await mixer.page.getByText('Live: everything entered here is on the server').waitFor();
    await toPage(boom.page, 'phones');
    await boom.page.getByText('what follows is sealed with a key that it does not have').waitFor();
    expect(await ids(boom)).toEqual(before);
    expect((await ids(mixer)).length).toBeGreaterThan(before.length);
  });

  test('is left in every window of the phone', async () => {
    const second = await mixer.openWindow(new URL(mixer.page.url()).hash.replace(/^/, '/'));
    await headSays(second, 'live');
    await tap(second, 'Leave live');
    for (const page of [second, mixer.page])
      await expect.poll(() => page.locator('.head-facts').textContent()).not.toMatch(/live|alone|catching/);
    await second.close();
  });

  test('asks nothing of any other host', () => {
    for (const stage of [mixer, boom])
      expect(stage.requests.filter((url) => !url.startsWith(stage.origin))).toEqual([]);
  });
});
