import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStage, type Stage } from './harness.ts';
import { DIST } from './harness-server.ts';

const shown = (stage: Stage) => stage.page.locator('#app > *').count();

describe('the built app', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage({ ownBrowser: true, worker: true });
    await stage.waitOfflineReady();
  });
  afterAll(() => stage.close());

  test('is under the worker from the first visit on, without a reload', async () => {
    expect(await stage.page.evaluate(() => navigator.serviceWorker.controller?.scriptURL)).toBe(
      `${stage.origin}/sw.js`,
    );
    expect(await stage.page.evaluate(() => performance.getEntriesByType('navigation').length)).toBe(1);
    expect(stage.requests.filter((url) => url === `${stage.origin}/`)).toHaveLength(1);
  });

  test('forbids inline code, eval and every other host', async () => {
    const policy = await stage.page
      .locator('meta[http-equiv="Content-Security-Policy"]')
      .getAttribute('content');
    const directives = new Map(policy!.split('; ').map((text) => [text.split(' ')[0], text]));
    expect(directives.get('default-src')).toBe("default-src 'none'");
    expect(directives.get('script-src')).toBe("script-src 'self'");
    expect(directives.get('style-src')).toBe("style-src 'self'");
    expect(directives.get('connect-src')).toBe("connect-src 'self'");
    expect(policy).not.toMatch(/unsafe-|https?:|\*/);
  });

  test('is served with headers that let updates through and keep other pages out', async () => {
    const header = async (path: string, name: string) => (await fetch(stage.origin + path)).headers.get(name);
    const script = new URL(
      await stage.page.locator('script[src^="/assets/"]').first().getAttribute('src').then(String),
      stage.origin,
    );
    for (const path of ['/', '/index.html', '/sw.js', '/manifest.webmanifest']) {
      expect(await header(path, 'cache-control'), path).toBe('no-cache');
    }
    expect(await header(script.pathname, 'cache-control')).toBe('public, max-age=31536000, immutable');
    expect(await header('/', 'content-security-policy')).toBe("frame-ancestors 'none'");
    expect(await header('/', 'x-content-type-options')).toBe('nosniff');
    expect(await header('/manifest.webmanifest', 'content-type')).toContain('application/manifest+json');
  });

  test('serves nothing from outside its folder, and no hidden file', async () => {
    for (const path of [
      '/.built-from',
      '/..%2fpackage.json',
      '/%2e%2e/package.json',
      '/assets/..%5c..%5cpackage.json',
      '/%00',
      '/%',
    ]) {
      expect((await fetch(stage.origin + path)).status, path).toBeGreaterThanOrEqual(400);
    }
  });

  test('can be installed: every icon of the manifest is there, in the size it says', async () => {
    const sizes = await stage.page.evaluate(async () => {
      const link = document.querySelector<HTMLLinkElement>('link[rel="manifest"]')!;
      const manifest = await (await fetch(link.href)).json();
      const measure = async ({ src, sizes }: { src: string; sizes: string }) => {
        const image = new Image();
        image.src = new URL(src, link.href).href;
        await image.decode();
        return { src, said: sizes, is: `${image.naturalWidth}x${image.naturalHeight}` };
      };
      return Promise.all((manifest.icons as { src: string; sizes: string }[]).map(measure));
    });
    // One of them is masked. None is a drawing that scales: it would be laid out anew at every start.
    expect(sizes.map(({ said }) => said)).toEqual(['192x192', '512x512', '512x512']);
    for (const { src, said, is } of sizes) expect(is, src).toBe(said);
  });

  // From here on the server is dead; the order of these tests matters.
  test('starts again with no signal after a reload, at the address of any screen', async () => {
    await stage.killServer();
    await expect(fetch(stage.origin)).rejects.toThrow();
    await stage.reload();
    expect(await shown(stage)).toBeGreaterThan(0);
    const deep = await stage.openWindow('/some/where');
    expect(await deep.locator('#app > *').count()).toBeGreaterThan(0);
    await deep.close();
  });

  test('starts again with no signal after the browser was closed', async () => {
    await stage.relaunch();
    expect(await shown(stage)).toBeGreaterThan(0);
    expect(await stage.page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  });

  test('has every file of the build on the phone', async () => {
    const files = await stage.page.evaluate(async () => {
      const names = await caches.keys();
      const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return requests.flat().map(({ url }) => new URL(url).pathname);
    });
    const built = readdirSync(DIST, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map((entry) => `${entry.parentPath.slice(DIST.length)}/${entry.name}`);
    expect(built.filter((path) => path !== '/sw.js').sort()).toEqual([...new Set(files)].sort());
  });

  test('has its ground with its style alone, without any script: dark where the phone is', async () => {
    const session = await stage.context.newCDPSession(stage.page);
    await session.send('Emulation.setScriptExecutionDisabled', { value: true });
    for (const [colorScheme, ground] of [
      ['dark', 'rgb(13, 13, 14)'],
      ['light', 'rgb(243, 240, 232)'],
    ] as const) {
      await stage.page.emulateMedia({ colorScheme });
      await stage.page.reload();
      expect(await stage.page.locator('#app > *').count()).toBe(0);
      const { backgroundColor } = await stage.page
        .locator('html')
        .evaluate((root) => ({ backgroundColor: getComputedStyle(root).backgroundColor }));
      expect(backgroundColor).toBe(ground);
    }
    await session.send('Emulation.setScriptExecutionDisabled', { value: false });
  });

  test('asked nothing of any other host, in any of this', () => {
    expect(stage.requests.length).toBeGreaterThan(0);
    expect(stage.requests.filter((url) => !url.startsWith(`${stage.origin}/`))).toEqual([]);
  });
});
