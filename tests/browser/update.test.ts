import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import type { createUpdateWatcher } from '../../src/offline/service-worker.ts';
import type { Busy, UpdateState, UpdateWatcher } from '../../src/offline/update-watcher.ts';
import { speaker, take } from '../day/say.ts';
import { noteFault } from './faults-table.ts';
import { onStage, type Stage, type StageOptions } from './harness.ts';
import { DIST } from './harness-server.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { paste, startDay, takeOne, takesOnTheLine, tap } from './tapping.ts';
import { listAnew } from './worker-list.ts';

const WATCHER = resolve(import.meta.dirname, '../../src/offline/service-worker.ts');
const root = mkdtempSync(join(tmpdir(), 'rollbook-versions-'));
const folderOf = (version: string): string => join(root, version);

/** A copy of the build that calls itself another version; the worker sees a changed page. */
function makeVersion(version: string, extraFile?: string): void {
  const folder = folderOf(version);
  cpSync(DIST, folder, { recursive: true });
  const page = join(folder, 'index.html');
  const html = readFileSync(page, 'utf8');
  writeFileSync(page, html.replace('<title>', `<meta name="version" content="${version}" /><title>`));
  listAnew(folder, {
    revisions: { 'index.html': version },
    extra: extraFile ? [{ url: extraFile, revision: null }] : [],
  });
}

beforeAll(async () => {
  for (const version of ['one', 'two', 'three']) makeVersion(version);
  makeVersion('half', 'assets/lost-on-the-way.js');
  makeVersion('mixed');
  cpSync(join(folderOf('three'), 'index.html'), join(folderOf('mixed'), 'index.html'));
  // The watcher alone, for the tests that call it directly; only the first version has to carry it.
  await build({
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    mode: 'production',
    define: { 'import.meta.env.DEV': 'false' },
    build: {
      outDir: folderOf('one'),
      emptyOutDir: false,
      lib: { entry: WATCHER, formats: ['es'], fileName: () => 'watcher.js' },
      // In the app every part is on the phone; of this one only the file itself is.
      rolldownOptions: { output: { codeSplitting: false } },
    },
  });
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const versionOf = (page: Page): Promise<string | null> =>
  page.locator('meta[name="version"]').getAttribute('content');

/** Serves another version and lets the worker look for it; resolves when it has come, or failed to. */
async function offer(stage: Stage, version: string, page: Page = stage.page): Promise<string> {
  await stage.startServer(folderOf(version));
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const found = new Promise<ServiceWorker>((done) =>
      registration.addEventListener('updatefound', () => done(registration.installing!), { once: true }),
    );
    await registration.update();
    const worker = await found;
    while (worker.state === 'installing') {
      await new Promise((done) => worker.addEventListener('statechange', done, { once: true }));
    }
    return worker.state;
  });
}

interface Probe {
  watcher: UpdateWatcher;
  busy: Busy | undefined;
  told: UpdateState[];
}

/** Puts a second watcher, with nothing of the app around it, into the page. */
async function putProbe(page: Page): Promise<void> {
  // As text: the test runner rewrites `import(` in functions, and the page would not know its word for it.
  await page.evaluate("import('/watcher.js').then((module) => Object.assign(globalThis, module))");
  await page.evaluate(() => {
    const probe: Omit<Probe, 'watcher'> = { busy: undefined, told: [] };
    const create = (globalThis as unknown as { createUpdateWatcher: typeof createUpdateWatcher })
      .createUpdateWatcher;
    const watcher = create({
      onUpdate: (state) => probe.told.push(state),
      onOffline: () => undefined,
      onPartMissing: () => undefined,
      busyWith: () => probe.busy,
    });
    Object.assign(globalThis, { probe: Object.assign(probe, { watcher }) });
    void watcher.start();
  });
}
const tryRestart = (page: Page, busy?: Busy): Promise<unknown> =>
  page.evaluate(async (why) => {
    const { probe } = globalThis as unknown as { probe: Probe };
    probe.busy = why;
    const result = await probe.watcher.restartIntoUpdate();
    return result.ok ? result.value : result.problem.because;
  }, busy);
const told = (page: Page): Promise<readonly UpdateState[]> =>
  page.evaluate(() => (globalThis as unknown as { probe: Probe }).probe.told);

const begin = (work: (stage: Stage) => Promise<void>, options: StageOptions = {}): Promise<void> =>
  onStage({ folder: folderOf('one'), worker: true, ...options }, async (stage) => {
    await stage.waitOfflineReady();
    await work(stage);
  });

describe('a new version', () => {
  test('reloads nothing when it comes, and starts with the next start, even with no signal', () =>
    begin(
      async (stage) => {
        let loads = 0;
        stage.page.on('framenavigated', () => {
          loads += 1;
        });
        expect(await offer(stage, 'two')).toBe('installed');
        await stage.killServer();
        expect(await versionOf(stage.page)).toBe('one');
        expect(loads).toBe(0);
        await stage.relaunch();
        expect(await versionOf(stage.page)).toBe('two');
      },
      { ownBrowser: true },
    ));

  test('starts before anything is rendered when the only window is reloaded, with one load more', () =>
    begin(async (stage) => {
      await offer(stage, 'two');
      await stage.killServer();
      let loads = 0;
      stage.page.on('framenavigated', () => {
        loads += 1;
      });
      await stage.page.reload();
      await expect.poll(() => versionOf(stage.page)).toBe('two');
      await stage.page.locator('#app > *').first().waitFor();
      expect(loads).toBe(2);
    }));

  test('waits while a second window is open, and reloads neither', () =>
    begin(async (stage) => {
      const other = await stage.openWindow();
      await offer(stage, 'two');
      await stage.reload();
      expect(await versionOf(stage.page)).toBe('one');
      expect(await versionOf(other)).toBe('one');
      await other.close();
      await stage.page.reload();
      await expect.poll(() => versionOf(stage.page)).toBe('two');
    }));

  test('that came only half leaves the old one working, and does not hide the next', () =>
    begin(async (stage) => {
      expect(await offer(stage, 'half')).toBe('redundant');
      await stage.killServer();
      await stage.reload();
      expect(await versionOf(stage.page)).toBe('one');
      await putProbeAgain(stage);
      expect(await offer(stage, 'half')).toBe('redundant');
      expect(await offer(stage, 'three')).toBe('installed');
      await expect.poll(() => told(stage.page)).toEqual(['waiting']);
      stage.forgive(/lost-on-the-way|bad-precaching-response/);
    }));

  test('is not taken with a file of another one: a host that was just given the next has both', () =>
    begin(async (stage) => {
      expect(await offer(stage, 'mixed')).toBe('redundant');
      stage.forgive(/integrity|bad-precaching-response/);
      await stage.killServer();
      await stage.reload();
      expect(await versionOf(stage.page)).toBe('one');
    }));

  test('is looked for when the app comes back to the screen, at most once an hour', () =>
    begin(
      async (stage) => {
        await stage.startServer(folderOf('two'));
        const comeBack = () =>
          stage.page.evaluate(() => void document.dispatchEvent(new Event('visibilitychange')));
        const isWaiting = () =>
          stage.page.evaluate(async () => Boolean((await navigator.serviceWorker.ready).waiting));
        const hasAsked = async (): Promise<boolean> =>
          stage.page.evaluate(async () => {
            const registration = await navigator.serviceWorker.ready;
            return Boolean(registration.installing ?? registration.waiting);
          });
        await stage.setClock('2026-03-02T08:59:59.000Z');
        await comeBack();
        expect(await hasAsked()).toBe(false);
        await stage.setClock('2026-03-02T09:00:01.000Z');
        await comeBack();
        await expect.poll(isWaiting).toBe(true);
        expect(await versionOf(stage.page)).toBe('one');
      },
      { clock: '2026-03-02T08:00:00.000Z' },
    ));
});

describe('a new version while a take is open', () => {
  test('reloads nothing, is offered, refused while the take rolls, and started after it; nothing is lost', () =>
    begin(
      async (stage) => {
        const { page } = stage;
        await startDay(page);
        await takeOne(page);
        await tap(page, /^Roll$/);
        await stage.waitSaved();
        const day = openDayId(page);
        let loads = 0;
        page.on('domcontentloaded', () => {
          loads += 1;
        });
        expect(await offer(stage, 'two')).toBe('installed');
        await stage.killServer();
        await tap(page, /^About this day/);
        const sheet = page.getByRole('dialog');
        await sheet.getByRole('button', { name: 'Restart now' }).tap();
        await sheet.getByText('A take is rolling. Cut it, then restart.').waitFor();
        expect(await versionOf(page)).toBe('one');
        expect(loads).toBe(0);
        await page.keyboard.press('Escape');
        await sheet.waitFor({ state: 'detached' });
        await tap(page, /^Cut$/);
        await stage.waitSaved();
        const before = await storedFacts(page, day);
        await tap(page, /^About this day/);
        await sheet.getByRole('button', { name: 'Restart now' }).tap();
        await expect.poll(() => versionOf(page).catch(() => '')).toBe('two');
        await page.locator('.dock').waitFor();
        const after = await storedFacts(page, day);
        noteFault(
          'new version while a take is open',
          `1 time, ${before.length} facts`,
          before.length - after.length,
        );
        expect(after).toEqual(before);
        expect(await takesOnTheLine(page)).toBe(2);
      },
      { ownBrowser: true },
    ));

  test('leaves in the day what the old version cannot understand: kept, told, handed on, and understood later', () =>
    begin(async (stage) => {
      const { page } = stage;
      const phone = speaker('phonea');
      phone.say(take('24', 1, 1));
      const [known] = phone.say(take('24', 1, 2));
      const { kind: _kind, ...envelope } = known!;
      const sky = { sky: ['overcast', { wind: 4 }] };
      const unknown: Envelope = { ...envelope, kind: 'weather-told', ...sky };
      const text = writeDayFile('day-1', 'Newer', [phone.facts[0]!, unknown]);
      await tap(page, /^Import day file/);
      await paste(page.getByLabel('Or paste the text'), text);
      await tap(page, 'Import what was pasted');
      await takeOne(page);
      await stage.waitSaved();
      await tap(page, /^About this day/);
      const sheet = page.getByRole('dialog');
      await sheet.getByText('1 entry of this day was made by a newer version').waitFor();
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        sheet.getByRole('button', { name: 'Download the day file' }).tap(),
      ]);
      const given = readDayFile(readFileSync(await download.path(), 'utf8'));
      expect(given.ok && given.value.stored).toContainEqual(unknown);
      expect(await storedFacts(page, 'day-1')).toContainEqual(unknown);
      await stage.reload();
      expect(await takesOnTheLine(page)).toBe(2);
    }));
});

describe('a restart into the new version', () => {
  test('is refused with its reason, and done when nothing forbids it', () =>
    begin(async (stage) => {
      await putProbe(stage.page);
      expect(await tryRestart(stage.page)).toBe('no-update');
      await offer(stage, 'two');
      await expect.poll(() => told(stage.page)).toEqual(['waiting']);
      expect(await tryRestart(stage.page, 'open-take')).toBe('open-take');
      expect(await tryRestart(stage.page, 'not-saved')).toBe('not-saved');
      const other = await stage.openWindow();
      expect(await tryRestart(stage.page)).toBe('other-window');
      await other.close();
      expect(await versionOf(stage.page)).toBe('one');
      // The closed window's lock may outlive it by a moment; until then the answer stays a refusal.
      await expect.poll(() => tryRestart(stage.page).catch(() => 'loading anew')).not.toBe('other-window');
      await expect.poll(() => versionOf(stage.page).catch(() => '')).toBe('two');
    }));

  test('that another window forced is told, and reloads nothing', () =>
    begin(async (stage) => {
      await putProbe(stage.page);
      // The app's own watcher takes a waiting version before it renders; this one has to be told that there is a screen.
      await stage.page.evaluate(
        () => void (globalThis as unknown as { probe: Probe }).probe.watcher.takeWaiting(),
      );
      const other = await stage.openWindow();
      await offer(stage, 'two');
      // Chromium delays a worker for minutes that is put in charge while a page asks the one before for a file
      // (src/offline/service-worker.ts); one that forces it does not wait for that by itself.
      await other.waitForLoadState('networkidle');
      await other.evaluate(async () => {
        const { waiting } = await navigator.serviceWorker.ready;
        waiting!.postMessage({ type: 'SKIP_WAITING' });
      });
      await expect.poll(() => told(stage.page)).toContain('stale');
      expect(await versionOf(stage.page)).toBe('one');
      expect(await versionOf(other)).toBe('one');
    }));
});

async function putProbeAgain(stage: Stage): Promise<void> {
  await stage.startServer(folderOf('one'));
  await putProbe(stage.page);
}
