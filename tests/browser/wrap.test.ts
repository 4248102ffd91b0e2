import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { onStage, type Stage } from './harness.ts';

const NIGHT = '2026-11-20T03:10:00Z';

const button = ({ page }: Stage, name: string | RegExp) => page.getByRole('button', { name }).first();
const tab = ({ page }: Stage, name: string) => page.getByRole('link', { name, exact: true }).tap();

async function openSample(stage: Stage): Promise<void> {
  await stage.waitOfflineReady();
  await button(stage, 'Sample day').tap();
  await stage.page.locator('.rows .row').first().waitFor();
  await stage.killServer();
}

const shown = async ({ page }: Stage): Promise<string> =>
  (await page.locator('.report-text').first().textContent()) ?? '';

/** Taps a button that downloads so many files, and gives what they hold. */
async function downloads(stage: Stage, name: string | RegExp, count: number): Promise<Map<string, Buffer>> {
  const got: Promise<[string, Buffer]>[] = [];
  const hear = (download: { suggestedFilename(): string; path(): Promise<string> }): void => {
    got.push(download.path().then((path) => [download.suggestedFilename(), readFileSync(path)]));
  };
  stage.page.on('download', hear);
  await button(stage, name).tap();
  await expect.poll(() => got.length).toBe(count);
  stage.page.off('download', hear);
  return new Map(await Promise.all(got));
}

describe('wrap, with no signal', () => {
  beforeAll(needPoppler);

  test('gives pages, table, text and web page that say the same, and records what went out', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      await openSample(stage);
      await tab(stage, 'Wrap');
      await stage.page.locator('.report-text').waitFor();
      await button(stage, 'One web page').tap();
      await stage.page.getByText('sound report.html').waitFor();
      const files = await downloads(stage, 'Download the report', 4);
      const of = (ending: string): Buffer => [...files].find(([name]) => name.endsWith(ending))![1];
      const text = of('.txt').toString('utf8');
      expect(text).toBe(await shown(stage));

      const sheets = pageTexts(of('.pdf'));
      expect(sheets.length).toBeGreaterThan(3);
      const pages = sheets.join('\n');
      const csv = of('.csv').toString('utf8');
      const html = of('.html').toString('utf8');
      for (const words of ['45B/2', 'Ксенија', 'Boom Jurrien', 'clothing rustle', '14C', 'Brandsæter']) {
        expect(text, words).toContain(words);
        expect(pages, words).toContain(words);
        expect(html, words).toContain(words);
      }
      for (const words of ['Ксенија', 'clothing rustle', '14C']) expect(csv, words).toContain(words);
      expect(csv.trimEnd().split('\r\n')).toHaveLength(76);

      await stage.waitSaved();
      await stage.reload();
      await stage.page.getByText('downloaded').waitFor();
      expect(await stage.page.locator('#sent-head').textContent()).toBe('Sent');
    });
  });

  test('makes a revision that says what changed, and shows the earlier one again byte for byte', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      const { page } = stage;
      await openSample(stage);
      await tab(stage, 'Wrap');
      await page.locator('.report-text').waitFor();
      const first = await downloads(stage, 'Download the report', 3);
      const firstText = await shown(stage);
      await expect.poll(() => page.locator('#report-head').textContent()).toContain('nothing changed since');

      // The last take turns out to be circled.
      await tab(stage, 'Now');
      await button(stage, /^circle 2 take 45B\/2/).tap();
      await tab(stage, 'Wrap');
      await expect.poll(() => page.locator('#report-head').textContent()).toContain('revision B');
      const changes = await page.locator('.report-changes li').allTextContents();
      expect(changes).toHaveLength(1);
      expect(changes[0]).toContain('45B/2');
      expect(changes[0]).toContain('circled');
      expect(await shown(stage)).toContain('REVISION B');
      const second = await downloads(stage, 'Download the report', 3);
      expect([...second.keys()].every((name) => name.includes('B'))).toBe(true);
      const [head] = pageTexts([...second].find(([name]) => name.endsWith('.pdf'))![1]);
      expect(head).toContain('evision B');

      // Report A once more: each file as it was, to the byte.
      await page.getByRole('button', { name: /^A/ }).filter({ hasText: 'downloaded' }).tap();
      const dialog = page.getByRole('dialog');
      await expect.poll(() => dialog.locator('.report-text').textContent()).toBe(firstText);
      for (const [name, bytes] of first) {
        const ending = name.split('.').at(-1)!;
        const again = await downloads(stage, new RegExp(`^${ending}$`), 1);
        expect([...again.values()][0]!.equals(bytes), ending).toBe(true);
      }
    });
  });

  test('hands the share sheet files that were ready before the tap', async () => {
    const withShareSheet = (): void => {
      const handed: string[] = [];
      Object.assign(window, { handed });
      Object.assign(navigator, {
        canShare: ({ files }: { files: File[] }) =>
          files.every(({ name }) => /\.(pdf|csv|txt|html)$/.test(name)),
        share: ({ files }: { files: File[] }) => {
          handed.push(...files.map(({ name, size }) => `${name} ${size > 0}`));
          // As a phone does when the tap is long past.
          if (!navigator.userActivation.isActive) throw new DOMException('too late', 'NotAllowedError');
          return Promise.resolve();
        },
      });
    };
    await onStage({ clock: NIGHT, before: withShareSheet }, async (stage) => {
      await openSample(stage);
      await tab(stage, 'Wrap');
      await button(stage, 'Share the report').tap();
      await stage.page.getByText('handed to the share sheet').waitFor();
      const handed = await stage.page.evaluate(() => (window as unknown as { handed: string[] }).handed);
      expect(handed.map((line) => line.replace(/^.*\./, ''))).toEqual(['pdf true', 'csv true', 'txt true']);
      expect(await stage.page.getByRole('button', { name: 'Mail draft with files' }).count()).toBe(0);
    });
  });

  test('draws the picture of the day, and a tap on a band opens its take', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      const { page } = stage;
      await openSample(stage);
      await tab(stage, 'Wrap');
      await button(stage, /^Picture of the day/).tap();
      const band = page.getByRole('button', { name: /^Judge Havlík, Zuzu, clash, track 16/ });
      await band.scrollIntoViewIfNeeded();
      expect(await page.getByRole('button', { name: /^45A\/3, circled/ }).count()).toBe(1);
      await band.press('Enter');
      expect(await page.getByRole('dialog').getByRole('heading').first().textContent()).toBe('44/1');
    });
  });
});
