import { once } from 'node:events';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onStage, type Stage, type StageOptions } from './harness.ts';
import { DIST } from './harness-server.ts';
import { openSampleDay } from './places.ts';
import { listAnew } from './worker-list.ts';

const READY = /Ready to work with no signal/;
const SOME_GONE = /Some of the app is missing from this phone/;

/** Every name under which the worker keeps a file. */
const keptNow = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const names = (await caches.keys()).filter((one) => one.startsWith('workbox-precache'));
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests
      .flat()
      .map(({ url }) => url)
      .sort();
  });

/** Throws away files that the worker keeps, as a browser does that is short of room; gives their names. */
const throwAway = (page: Page, wanted: RegExp): Promise<string[]> =>
  page.evaluate(async (source) => {
    const pattern = new RegExp(source);
    const [name] = (await caches.keys()).filter((one) => one.startsWith('workbox-precache'));
    const cache = await caches.open(name!);
    const gone = (await cache.keys()).filter(({ url }) => pattern.test(url));
    for (const request of gone) await cache.delete(request);
    return gone.map(({ url }) => url);
  }, wanted.source);

const throwAllAway = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (const name of await caches.keys()) await caches.delete(name);
  });

/**
 * It says so, and the rooms are loaded ahead. One that is thrown away before would be asked for then, and come back without
 * a network: out of what the browser remembers of it, as a file that never changes.
 */
async function isReady(page: Page): Promise<void> {
  await page.getByText(READY).waitFor();
  await page.waitForFunction(() => {
    const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
    return ['.js', '.css'].every((end) =>
      loaded.some((name) => name.includes('/assets/wrap-') && name.endsWith(end)),
    );
  });
}

const onReadyStage = (work: (stage: Stage) => Promise<void>, options: StageOptions = {}): Promise<void> =>
  onStage({ worker: true, ...options }, async (stage) => {
    await stage.waitOfflineReady();
    // A page whose clock stands still has no list of what it loaded.
    await (options.clock ? stage.page.getByText(READY).waitFor() : isReady(stage.page));
    await work(stage);
  });

test('what the browser threw away of the app is fetched again at the next start with signal', () =>
  onReadyStage(async (stage) => {
    const before = await keptNow(stage.page);
    const gone = await throwAway(stage.page, /\/assets\/(wrap|given)|index\.html|first-/);
    expect(gone.length).toBeGreaterThan(3);
    await stage.reload();
    await stage.page.getByText(READY).waitFor();
    expect(await keptNow(stage.page)).toEqual(before);
  }));

test('a cache that is gone whole is filled again, and the app then starts with no signal', () =>
  onReadyStage(
    async (stage) => {
      const before = await keptNow(stage.page);
      await throwAllAway(stage.page);
      expect(await keptNow(stage.page)).toEqual([]);
      await stage.reload();
      await stage.page.getByText(READY).waitFor();
      expect(await keptNow(stage.page)).toEqual(before);
      await stage.killServer();
      await stage.relaunch();
      await stage.page.getByText(READY).waitFor();
    },
    { ownBrowser: true },
  ));

/** Stands where the server was, notes what is asked, of the page and of the worker, and answers nothing. */
async function listenInstead(origin: string): Promise<{ asked: string[]; end: () => Promise<void> }> {
  const asked: string[] = [];
  const server = createServer((request) => {
    asked.push(request.url!);
    request.socket.destroy();
  });
  server.listen(Number(new URL(origin).port), '127.0.0.1');
  await once(server, 'listening');
  return { asked, end: async () => void (await promisify(server.close.bind(server))()) };
}

test('with no signal and all files there it is ready, and nothing is asked but for a newer worker', () =>
  onReadyStage(async (stage) => {
    await stage.killServer();
    const { asked, end } = await listenInstead(stage.origin);
    await stage.reload();
    await isReady(stage.page);
    expect(asked.filter((path) => path !== '/sw.js')).toEqual([]);
    // It would have been seen: one that is missing is asked for, once, and not by the page.
    await throwAway(stage.page, /\/assets\/wrap/);
    await stage.reload();
    await stage.page.getByText(SOME_GONE).waitFor();
    const missing = asked.filter((path) => path !== '/sw.js');
    expect([...new Set(missing)]).toEqual([expect.stringContaining('/assets/wrap')]);
    await end();
  }));

test('with no signal a gap is told and ready is not said; it is mended when there is signal again', () =>
  onReadyStage(async (stage) => {
    const { page } = stage;
    const before = await keptNow(page);
    expect((await throwAway(page, /\/assets\/wrap/)).length).toBeGreaterThan(0);
    await stage.killServer();
    await stage.reload();
    await page.getByText(SOME_GONE).waitFor();
    expect(await page.getByText(READY).count()).toBe(0);
    await stage.screenshot('kept-files-gap');
    // Nothing that is missing was asked for, so the browser has nothing to complain of.
    expect(stage.faults).toEqual([]);
    await stage.startServer();
    // The phone finds a network again, with the app open.
    await page.evaluate(() => void window.dispatchEvent(new Event('online')));
    await page.getByText(READY).waitFor();
    expect(await keptNow(page)).toEqual(before);
  }));

test('without what it starts with it is not ready to start, and that is said within the hour, in an app that stays open', () =>
  onReadyStage(
    async (stage) => {
      await throwAway(stage.page, /index\.html/);
      await stage.killServer();
      await stage.setClock('2026-03-02T09:00:01.000Z');
      await stage.page.evaluate(() => void document.dispatchEvent(new Event('visibilitychange')));
      await stage.page.getByText(/Not ready to start with no signal yet/).waitFor();
      expect(stage.faults).toEqual([]);
      await stage.startServer();
      await stage.reload();
      await stage.page.getByText(READY).waitFor();
    },
    { clock: '2026-03-02T08:00:00.000Z' },
  ));

test('a screen that is gone from the phone says that it needs signal, and opening again is not offered', () =>
  onReadyStage(async (stage) => {
    await openSampleDay(stage);
    const { page } = stage;
    await throwAway(page, /\/assets\/wrap/);
    await stage.killServer();
    await stage.reload();
    await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
    await page.getByText(/not on this phone.*opened with signal/).waitFor();
    expect(await page.getByText('Open the app again;').count()).toBe(0);
    // What is said covers no way out.
    await page.getByRole('button', { name: 'Back', exact: true }).tap({ trial: true });
    await stage.screenshot('kept-files-screen-missing');
    // It was asked for by a tap, and nobody was there.
    expect(stage.forgive(/assets\/wrap/).length).toBeGreaterThan(0);
    await stage.startServer();
    await page.getByRole('button', { name: 'Back', exact: true }).tap();
    await page.locator('.dock').waitFor();
    await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
    await page.locator('.report-text').first().waitFor();
  }));

/** A build in which every script has a different name, as where one of them changes: they name each other. */
function versionWithOtherNames(folder: string): void {
  cpSync(DIST, folder, { recursive: true });
  const assets = join(folder, 'assets');
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
  const others = new Map(scripts.map((name) => [name, name.replace(/\.js$/, '-other.js')]));
  expect(scripts.filter((name) => /^(wrap|given)-/.test(name))).toHaveLength(2);
  const changed: string[] = [];
  for (const path of [...scripts.map((name) => join('assets', name)), 'index.html', 'sw.js']) {
    const old = readFileSync(join(folder, path), 'utf8');
    const text = [...others].reduce((rest, [name, other]) => rest.replaceAll(name, other), old);
    const name = others.get(path.replace('assets/', ''));
    if (name) rmSync(join(folder, path));
    else if (text !== old) changed.push(path);
    writeFileSync(join(folder, name ? `assets/${name}` : path), text);
  }
  expect(changed).toEqual(['index.html', 'sw.js']);
  listAnew(folder, { revisions: { 'index.html': 'other' } });
}

test('a screen of a version that is gone says to open the app again, and that helps', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-other-names-'));
  try {
    versionWithOtherNames(folder);
    await onReadyStage(async (stage) => {
      await openSampleDay(stage);
      const { page } = stage;
      // Not loaded ahead, since it is not there.
      await throwAway(page, /\/assets\/wrap/);
      await stage.killServer();
      await stage.reload();
      await page.locator('.dock').waitFor();
      await stage.startServer(folder);
      await page.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update();
        while (!registration.waiting) await new Promise((done) => setTimeout(done, 50));
        const inCharge = new Promise((done) =>
          navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }),
        );
        registration.waiting.postMessage({ type: 'SKIP_WAITING' });
        await inCharge;
      });
      await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
      await page.getByText('Open the app again; nothing is lost.').waitFor();
      expect(stage.forgive(/assets\/wrap/).length).toBeGreaterThan(0);
      await stage.reload();
      await page.locator('.report-text').first().waitFor();
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('a page that is gone from the phone is opened as it is served by now, and is not kept with the older files', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-other-names-'));
  try {
    versionWithOtherNames(folder);
    await onReadyStage(async (stage) => {
      const { page } = stage;
      const [gone] = await throwAway(page, /index\.html/);
      await stage.startServer(folder);
      await page.goto(stage.origin);
      await page.locator('script[src$="-other.js"]').waitFor({ state: 'attached' });
      await page.locator('#app > *').first().waitFor();
      expect(await keptNow(page)).not.toContain(gone);
      stage.forgive(/integrity/);
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('a new version with a gap is not put in charge of a phone without signal, which would leave none that starts', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-other-names-'));
  try {
    versionWithOtherNames(folder);
    await onReadyStage(async (stage) => {
      const { page } = stage;
      await stage.startServer(folder);
      await page.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update();
        while (!registration.waiting) await new Promise((done) => setTimeout(done, 50));
      });
      expect((await throwAway(page, /given-.*-other\.js|WB_REVISION__=other/)).length).toBe(2);
      await stage.killServer();
      await stage.reload();
      await page.getByText(READY).waitFor();
      const script = page.locator('script[src^="/assets/given-"]').first();
      expect(await script.getAttribute('src')).not.toContain('other');
      // With signal its gap is closed, and it starts.
      await stage.startServer(folder);
      await page.reload();
      await page.locator('script[src$="-other.js"]').waitFor({ state: 'attached' });
      await page.getByText(READY).waitFor();
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
