import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sampleText } from '../../sample-days/load.ts';
import { onStage, type Stage } from './harness.ts';
import { DIST } from './harness-server.ts';
import { openSampleDay } from './places.ts';

const CLOCK = '2026-11-20T03:05:00Z';
const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8'));

const goTo = ({ page }: Stage, hash: string) =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);

/** Width and height of a PNG: the header chunk, PNG (Third Edition) 11.2.1. */
function pngSize(path: string): [number, number] {
  const bytes = readFileSync(join(DIST, path));
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

/** Hands files to the app as a phone's share sheet does: a form of another page is posted to the address of the target. */
async function share({ page, origin }: Stage, files: { name: string; mimeType: string; buffer: Buffer }[]) {
  await page.goto('about:blank');
  await page.setContent(
    `<form method="post" enctype="multipart/form-data" action="${origin}${manifest.share_target.action}">
      <input type="file" name="files" multiple><button>Share</button></form>`,
  );
  await page.locator('input').setInputFiles(files);
  await page.locator('button').tap();
}

/** A recording of two samples, 16 bit at 48 kHz: EBU Tech 3285, section 2. */
function wave(): Buffer {
  const chunk = (id: string, body: number[]): number[] => [...Buffer.from(id), body.length, 0, 0, 0, ...body];
  const format = [1, 0, 1, 0, 0x80, 0xbb, 0, 0, 0, 0x77, 1, 0, 2, 0, 16, 0];
  const body = [...Buffer.from('WAVE'), ...chunk('fmt ', format), ...chunk('data', [0, 0, 0, 0])];
  return Buffer.from(chunk('RIFF', body));
}

describe('the manifest (W3C Web Application Manifest)', () => {
  test('has icons of the sizes it names, one of them maskable', () => {
    for (const { src, sizes, type } of manifest.icons) {
      if (type === 'image/png') expect(pngSize(src).join('x'), src).toBe(sizes);
      else expect(readFileSync(join(DIST, src), 'utf8')).toContain('<svg');
    }
    expect(manifest.icons.some(({ purpose }: { purpose?: string }) => purpose === 'maskable')).toBe(true);
  });

  test('starts on black, whole screen, and turns with the phone', () => {
    const { display, orientation, background_color: ground, theme_color: around } = manifest;
    expect({ display, orientation, ground, around }).toEqual({
      display: 'standalone',
      orientation: 'any',
      ground: '#000000',
      around: '#000000',
    });
  });

  test('has shortcuts that lead to Roll, the inputs and the report of the newest day, with no signal', async () => {
    const urls = manifest.shortcuts.map(({ url }: { url: string }) => url);
    expect(urls).toEqual(['/#/roll', '/#/inputs', '/#/report']);
    await onStage({ clock: CLOCK, worker: true }, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      await goTo(stage, '#/roll');
      await page.getByRole('status').filter({ hasText: 'No days yet' }).waitFor();
      await openSampleDay(stage);
      await stage.killServer();
      await page.goto(`${stage.origin}${urls[2]}`);
      await page.locator('.report-text').waitFor();
      await goTo(stage, urls[1].slice(1));
      await page.getByRole('dialog', { name: 'Inputs' }).waitFor();
      await goTo(stage, urls[0].slice(1));
      await page.getByRole('button', { name: 'Roll', exact: true }).waitFor();
      expect(await page.getByRole('dialog').count()).toBe(0);
      expect(page.url()).toMatch(/\/now$/);
    });
  });
});

describe('day files from outside', () => {
  test('are imported by a tap when another app shares one, with no signal (W3C Web Share Target)', async () => {
    const { action, method, params } = manifest.share_target;
    expect([action, method, params.files[0].name]).toEqual(['/take-in', 'POST', 'files']);
    await onStage({ clock: CLOCK, worker: true }, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      await stage.killServer();
      await share(stage, [
        { name: 'day.txt', mimeType: 'text/plain', buffer: Buffer.from(sampleText('small')) },
      ]);
      await page.getByRole('button', { name: 'Import', exact: true }).tap();
      await page.locator('.dock').waitFor();
      await page.getByText('Lieve').first().waitFor();
      // Once imported it is not imported again.
      await goTo(stage, '#/shared');
      await page.getByRole('heading', { name: 'Rollbook' }).waitFor();
    });
  });

  test('a damaged one that is shared says first what can be had of it', async () => {
    await onStage({ clock: CLOCK, worker: true }, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      await stage.killServer();
      const text = sampleText('small').split('\n').slice(0, -3).join('\n');
      await share(stage, [{ name: 'cut-off.txt', mimeType: 'text/plain', buffer: Buffer.from(text) }]);
      await page.getByRole('dialog', { name: 'The file is damaged' }).waitFor();
      await page.getByRole('button', { name: 'Import what can be read' }).tap();
      await page.getByRole('dialog', { name: 'Imported' }).waitFor();
    });
  });

  test('are not lost where the window that was to import them was closed: the list of days leads to them', async () => {
    await onStage({ clock: CLOCK, ownBrowser: true, worker: true }, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      await page.evaluate(async (text) => {
        const form = new FormData();
        form.append('files', new File([text], 'day.txt', { type: 'text/plain' }));
        await fetch('/take-in', { method: 'POST', body: form });
      }, sampleText('small'));
      await stage.relaunch();
      await stage.page.getByRole('button', { name: /A file was shared/ }).tap();
      await stage.page.getByRole('button', { name: 'Import', exact: true }).tap();
      await stage.page.locator('.dock').waitFor();
      await stage.page.getByText('Lieve').first().waitFor();
      expect(await stage.page.evaluate(() => caches.has('rollbook-shared'))).toBe(false);
    });
  });

  test('recordings that another app shares go to the card check of the newest day', async () => {
    await onStage({ clock: CLOCK, worker: true }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await stage.waitOfflineReady();
      await stage.killServer();
      const files = ['T01.wav', 'T02.wav'].map((name) => ({ name, mimeType: 'audio/wav', buffer: wave() }));
      await share(stage, files);
      await page.getByRole('heading', { name: 'Card check' }).waitFor();
      await page.getByRole('region', { name: 'The card' }).getByText('2 files, 2 recordings').waitFor();
      expect(await page.evaluate(() => caches.has('rollbook-shared'))).toBe(false);
    });
  });

  test('are imported by a tap when the system opens one with the app (W3C File Handling); another file is refused in words', async () => {
    const before = (): void => {
      Object.defineProperty(window, 'launchQueue', {
        value: {
          setConsumer: (consume: unknown) => Object.assign(window, { launch: consume }),
        },
      });
    };
    await onStage({ clock: CLOCK, before }, async (stage) => {
      const { page } = stage;
      const launch = async (text: string): Promise<void> => {
        await expect.poll(() => page.evaluate(() => 'launch' in window)).toBe(true);
        await page.evaluate((content) => {
          const file = new File([content], 'day.txt', { type: 'text/plain' });
          const { launch: consume } = window as unknown as { launch(launched: object): void };
          consume({ files: [{ getFile: async () => file }] });
        }, text);
      };
      await launch('a shopping list');
      await page.getByRole('alert').filter({ hasText: 'not a day file' }).waitFor();
      await launch(sampleText('small'));
      await page.getByRole('button', { name: 'Import', exact: true }).tap();
      await page.locator('.dock').waitFor();
      await page.getByText('Lieve').first().waitFor();
    });
  });
});

describe('the room there is', () => {
  test('leaves what the phone covers free: notch, corners and home bar (CSS env())', async () => {
    await onStage({ clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      const session = await stage.context.newCDPSession(page);
      await session.send(
        'Emulation.setSafeAreaInsetsOverride' as 'Emulation.clearGeolocationOverride',
        {
          insets: { top: 47, bottom: 34, left: 0, right: 0 },
        } as never,
      );
      const head = page.locator('.head-day');
      await expect.poll(async () => (await head.boundingBox())!.y).toBeGreaterThanOrEqual(47);
      const tabs = (await page.getByRole('link', { name: 'Now', exact: true }).boundingBox())!;
      expect(tabs.y + tabs.height).toBeLessThanOrEqual(844 - 34);
      await page.getByRole('button', { name: /^About this day/ }).tap();
      const save = page.getByRole('button', { name: 'Save', exact: true });
      // A sheet comes up in a moment, not at once.
      const foot = async (): Promise<number> => {
        const { y, height } = (await save.boundingBox())!;
        return y + height;
      };
      await expect.poll(foot).toBeLessThanOrEqual(844 - 34);
    });
  });

  test('lifts a sheet above a keyboard that covers the page instead of shrinking it', async () => {
    const before = (): void => {
      const seen = Object.assign(new EventTarget(), { height: innerHeight, offsetTop: 0, scale: 1 });
      Object.defineProperty(window, 'visualViewport', { value: seen });
    };
    await onStage({ clock: CLOCK, before }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.getByRole('button', { name: /^note 2 take/ }).tap();
      const field = page.getByLabel('Own words');
      await field.focus();
      await page.evaluate(() => {
        Object.assign(visualViewport!, { height: 500 });
        visualViewport!.dispatchEvent(new Event('resize'));
      });
      const foot = async (): Promise<number> => {
        const box = (await page.getByRole('dialog').boundingBox())!;
        return box.y + box.height;
      };
      await expect.poll(foot).toBeLessThanOrEqual(500);
      const box = (await field.boundingBox())!;
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height).toBeLessThanOrEqual(500);
    });
  });

  test.each([
    { what: 'a phone on its side', viewport: { width: 844, height: 390 } },
    { what: 'a tablet', viewport: { width: 768, height: 1024 } },
    { what: 'a tablet on its side', viewport: { width: 1024, height: 768 } },
  ])(
    'is used on $what: Roll is whole, rows stand side by side or the dock beside them',
    async ({ viewport }) => {
      await onStage({ clock: CLOCK, viewport }, async (stage) => {
        const { page } = stage;
        await openSampleDay(stage);
        const roll = (await page.getByRole('button', { name: 'Roll', exact: true }).boundingBox())!;
        expect(roll.y + roll.height).toBeLessThanOrEqual(viewport.height);
        const rows = page.locator('.rows .row');
        const [first, second] = [(await rows.nth(0).boundingBox())!, (await rows.nth(1).boundingBox())!];
        const twoAbreast = first.y === second.y && first.x !== second.x;
        const dockBeside = roll.x >= first.x + first.width;
        expect(twoAbreast || dockBeside).toBe(true);
        const inView = await rows.evaluateAll(
          (all, height) => all.filter((one) => one.getBoundingClientRect().bottom <= height).length,
          viewport.height,
        );
        expect(inView).toBeGreaterThanOrEqual(5);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
        await stage.screenshot(`room-${viewport.width}`);
      });
    },
  );
});
