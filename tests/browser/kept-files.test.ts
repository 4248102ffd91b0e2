import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onStage } from './harness.ts';

const READY = /Ready to work with no signal/;

/** Throws away files that the worker keeps, as a browser does that is short of room; gives their names. */
const throwAway = (page: Page, wanted: string): Promise<string[]> =>
  page.evaluate(async (part) => {
    const [name] = (await caches.keys()).filter((one) => one.startsWith('workbox-precache'));
    const cache = await caches.open(name!);
    const gone = (await cache.keys()).filter(({ url }) => url.includes(part));
    for (const request of gone) await cache.delete(request);
    return gone.map(({ url }) => url);
  }, wanted);

const keptNow = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const [name] = (await caches.keys()).filter((one) => one.startsWith('workbox-precache'));
    return (await (await caches.open(name!)).keys()).map(({ url }) => url);
  });

test('what the browser threw away of the app is fetched again at the next start with signal', async () => {
  await onStage({}, async (stage) => {
    await stage.waitOfflineReady();
    const before = await keptNow(stage.page);
    const gone = [
      ...(await throwAway(stage.page, '/assets/wrap')),
      ...(await throwAway(stage.page, 'index.html')),
    ];
    expect(gone.length).toBeGreaterThan(1);
    await stage.reload();
    await stage.page.getByText(READY).waitFor();
    expect((await keptNow(stage.page)).sort()).toEqual(before.sort());
  });
});

test('without signal a gap is told, and ready is not said; with signal again it is mended', async () => {
  await onStage({}, async (stage) => {
    await stage.waitOfflineReady();
    await stage.page.getByText(READY).waitFor();
    await throwAway(stage.page, '/assets/wrap');
    await stage.killServer();
    await stage.reload();
    await stage.page.getByText(/Not ready to start with no signal yet/).waitFor();
    expect(await stage.page.getByText(READY).count()).toBe(0);
    await stage.startServer();
    await stage.reload();
    await stage.page.getByText(READY).waitFor();
    // What is gone was asked for, and nobody was there.
    expect(stage.forgive(/Failed to load resource/).length).toBeGreaterThan(0);
  });
});
