import { readFileSync } from 'node:fs';
import PostalMime from 'postal-mime';
import { beforeAll, describe, expect, test } from 'vitest';
import { needPoppler, pageSize, pageTexts } from '../oracle/poppler.ts';
import { readOtio } from '../report/formats/otio-reader.ts';
import { onStage, type Stage } from './harness.ts';

const NIGHT = '2026-11-20T03:10:00Z';

const button = ({ page }: Stage, name: string | RegExp) => page.getByRole('button', { name }).first();
const tab = ({ page }: Stage, name: string) => page.getByRole('link', { name, exact: true }).tap();

async function openSample(stage: Stage): Promise<void> {
  await button(stage, 'Sample day').tap();
  await stage.page.locator('.rows .row').first().waitFor();
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

const ending = (files: ReadonlyMap<string, Buffer>, end: string): Buffer =>
  [...files].find(([name]) => name.endsWith(end))![1];

async function openWrap(stage: Stage): Promise<void> {
  await openSample(stage);
  await tab(stage, 'Wrap');
  await stage.page.locator('.report-text').waitFor();
}

describe('wrap', () => {
  beforeAll(needPoppler);

  test('gives pages, table, text and web page that say the same, and records what went out, with no signal', async () => {
    await onStage({ clock: NIGHT, worker: true }, async (stage) => {
      await openSample(stage);
      await stage.loseSignal();
      await tab(stage, 'Wrap');
      await stage.page.locator('.report-text').waitFor();
      await button(stage, 'One web page').tap();
      await stage.page.getByText('sound report A.html').waitFor();
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
      expect(csv.trimEnd().split('\r\n')).toHaveLength(83);

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
      const second = await downloads(stage, 'Download the report', 4);
      expect([...second.keys()].every((name) => name.includes('B'))).toBe(true);
      // The table is the same table; what changed is a file of its own.
      const tables = [...second].filter(([name]) => name.endsWith('.csv'));
      const [table, told] = tables.map(([, bytes]) => bytes.toString('utf8').split('\r\n'));
      const before = [...first]
        .find(([name]) => name.endsWith('.csv'))![1]
        .toString('utf8')
        .split('\r\n');
      expect(table![0]).toBe(before[0]);
      expect(table).toHaveLength(before.length);
      expect(tables[1]![0]).toContain('changes');
      expect(told![1]).toContain('45B/2: status was empty, is circled.');
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
      // A kind of file that the sheet refuses does not keep the others back, and is named.
      await button(stage, 'Open timeline (OTIO)').tap();
      await stage.page.getByText('sound report A.otio').waitFor();
      await stage.page.getByText('1 file of a kind that sharing does not take on this phone').waitFor();
      await button(stage, 'Share the report').tap();
      await stage.page.getByRole('button', { name: /^A/ }).filter({ hasText: 'shared' }).waitFor();
      const handed = await stage.page.evaluate(() => (window as unknown as { handed: string[] }).handed);
      expect(handed.map((line) => line.replace(/^.*\./, ''))).toEqual(['pdf true', 'csv true', 'txt true']);
      // The link leaves out takes, and the draft, which does not, is offered where it says so.
      await stage.page.getByText('The email draft has everything, with the files.').waitFor();
      expect(await stage.page.getByRole('button', { name: 'Email draft with files' }).count()).toBe(1);
      const timeline = ending(await downloads(stage, 'Download the files', 4), '.otio').toString('utf8');
      expect(readOtio(timeline).tracks.flatMap(({ clips }) => clips).length).toBeGreaterThan(70);
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

  test('sends the same report on other paper under its letter, and both come back to the byte', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      const { page } = stage;
      await openWrap(stage);
      await button(stage, 'Table, own columns (CSV)').tap();
      await page.getByRole('button', { name: 'Table (CSV)', exact: true }).tap();
      await page.getByText('sound report A own columns.csv').waitFor();
      const first = await downloads(stage, 'Download the report', 3);
      await button(stage, 'Paper, columns, signature').tap();
      await button(stage, 'US Letter').tap();
      await page.getByLabel('Signature, under the report').fill('Boom and cables by Jurrien');
      await button(stage, 'Notes: remove').tap();
      await button(stage, 'Close').tap();
      await expect.poll(() => shown(stage)).toContain('Boom and cables by Jurrien');
      const second = await downloads(stage, 'Download the report', 3);
      expect([...second.keys()]).toEqual([...first.keys()]);
      expect(pageSize(ending(first, '.pdf'))).toContain('A4');
      expect(pageSize(ending(second, '.pdf'))).toContain('letter');
      expect(ending(second, '.csv').toString('utf8').split('\r\n')[0]).not.toContain('Notes');

      for (const [at, paper] of [
        [0, 'letter'],
        [1, 'A4'],
      ] as const) {
        await page.getByRole('button', { name: /^A/ }).filter({ hasText: 'downloaded' }).nth(at).tap();
        await page.getByText('the same to the byte').waitFor();
        const again = await downloads(stage, /^pdf$/, 1);
        expect(pageSize([...again.values()][0]!), paper).toContain(paper);
        await button(stage, 'Close').tap();
      }

      // One of them went nowhere, says the mixer; the other stands.
      await page.getByRole('button', { name: /^A/ }).filter({ hasText: 'downloaded' }).first().tap();
      await button(stage, 'It was not sent').tap();
      await expect
        .poll(() => page.getByRole('button', { name: /^A/ }).filter({ hasText: 'downloaded' }).count())
        .toBe(1);
    });
  });

  test('gives a mail draft with the files where no share sheet takes them, and records it', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      await openWrap(stage);
      await stage.page.getByLabel(/^To \(/).fill('edit@example.org, post@example.org');
      const [draft] = (await downloads(stage, 'Email draft with files', 1)).values();
      const mail = await PostalMime.parse(draft!);
      expect(mail.to?.map(({ address }) => address)).toEqual(['edit@example.org', 'post@example.org']);
      const files = await downloads(stage, 'Download the report', 3);
      expect(mail.attachments.map(({ filename }) => filename)).toEqual([...files.keys()]);
      for (const { filename, content } of mail.attachments) {
        expect(Buffer.from(content as ArrayBuffer).equals(files.get(filename!)!), filename!).toBe(true);
      }
      const rows = stage.page.locator('section[aria-labelledby="sent-head"] .row');
      expect(await rows.allTextContents()).toEqual([
        expect.stringContaining('downloadedto edit@example.org and post@example.org'),
        expect.stringContaining('downloaded as an email draftto edit@example.org and post@example.org'),
      ]);
    });
  });

  test('sends what there is when the pages cannot be made, and says so', async () => {
    await onStage({ clock: NIGHT, worker: true }, async (stage) => {
      await stage.waitOfflineReady();
      const fonts = await stage.page.evaluate(async () => {
        let gone = 0;
        for (const name of await caches.keys()) {
          const cache = await caches.open(name);
          for (const kept of await cache.keys())
            if (kept.url.includes('.ttf') && (await cache.delete(kept))) gone += 1;
        }
        return gone;
      });
      expect(fonts).toBe(2);
      const session = await stage.page.context().newCDPSession(stage.page);
      await session.send('Network.clearBrowserCache');
      await stage.killServer();
      await openWrap(stage);
      await stage.page
        .getByText(/^The pages could not be made \(.+\)\. Open the app once with a signal/)
        .waitFor();
      const files = await downloads(stage, 'Download the report', 2);
      expect([...files.keys()].map((name) => name.split('.').at(-1))).toEqual(['csv', 'txt']);
      const backup = await downloads(stage, 'Download the day file', 1);
      expect([...backup.keys()][0]).toMatch(/day file\.txt$/);
    });
  });

  test('leads from a matter to where it is settled, and then everything is settled', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      await openWrap(stage);
      await button(stage, /^Track 16 of Cart and Backup: Judge Havlík, Zuzu/).tap();
      // From the take where it began, not from now.
      expect(await button(stage, 'before 44/1').getAttribute('aria-pressed')).toBe('true');
      // What it does is said before the tap: later gangs of the track stay, and no other clash is settled.
      await button(stage, 'Gang: on purpose, from 44/1 on').waitFor();
      expect(await stage.page.locator('.action-effects').textContent()).toBe(
        'From 44/1 on, it covers takes to come as well. No other take changes.',
      );
      await button(stage, 'Gang: on purpose, 44/1 only').tap();
      await expect
        .poll(() => stage.page.locator('#unsettled-head').textContent())
        .toBe('Nothing left to settle');
      expect(await shown(stage)).not.toContain('NOT SETTLED');
    });
  });

  test('opens the take under the finger, and the arrows lead across the picture', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      const { page } = stage;
      await openSample(stage);
      await tab(stage, 'Wrap');
      await button(stage, /^Picture of the day/).tap();
      // All tracks are in view however large the takes are, and the whole picture can be kept.
      const ground = page.locator('.picture-ground');
      const sizes = () =>
        ground.evaluate((shown) => [shown.scrollHeight - shown.clientHeight, shown.scrollWidth]);
      const [, width] = await sizes();
      await button(stage, 'Larger').tap();
      await expect.poll(async () => (await sizes())[1]).toBeGreaterThan(width!);
      expect((await sizes())[0]).toBe(0);
      await button(stage, 'Smaller').tap();
      const [saved] = (await downloads(stage, 'Save', 1)).values();
      // PNG (ISO/IEC 15948, 5.2), two pixels a unit.
      expect(saved!.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
      expect(saved!.readUInt32BE(16)).toBeGreaterThan(1500);

      const heading = page.getByRole('dialog').getByRole('heading').first();
      const mix = page.getByRole('button', { name: /^Mix, track 1,/ });
      const third = (await page.getByRole('button', { name: '41/2, take' }).boundingBox())!;
      const band = (await mix.boundingBox())!;
      await page.touchscreen.tap(third.x + third.width / 2, band.y + band.height / 2);
      expect(await heading.textContent()).toBe('41/2');
      await button(stage, 'Close').tap();

      await page.getByRole('button', { name: '41/1 FS, take' }).focus();
      for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown']) await page.keyboard.press(key);
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
        /^Boom Jurrien, track 2,/,
      );
      await page.keyboard.press('Enter');
      expect(await heading.textContent()).toBe('41/1');
      expect(await page.getByRole('dialog').textContent()).toContain('false start');
    });
  });

  test('starts tomorrow with the crew and the rates of the last real day', async () => {
    await onStage({ clock: NIGHT }, async (stage) => {
      const { page } = stage;
      await button(stage, 'New day').tap();
      await page.getByLabel('Production').fill('Harbour Lights');
      await page.getByLabel('Day', { exact: true }).fill('Day 4');
      await button(stage, '29.97 DF').tap();
      await button(stage, 'Start the day').tap();
      await button(stage, /^About this day/).tap();
      await page.getByLabel('Sound mixer').fill('M. Vale');
      await button(stage, /^Save$/).tap();
      await stage.waitSaved();
      await page.evaluate(() => {
        location.hash = '#/';
      });
      await button(stage, 'New day').tap();
      await expect.poll(() => page.getByLabel('Day', { exact: true }).inputValue()).toBe('Day 5');
      expect(await page.getByLabel('Production').inputValue()).toBe('Harbour Lights');
      expect(await button(stage, '29.97 DF').getAttribute('aria-pressed')).toBe('true');
      await button(stage, 'Start the day').tap();
      await button(stage, /^About this day.*Day 5/).tap();
      expect(await page.getByLabel('Sound mixer').inputValue()).toBe('M. Vale');
    });
  });
});
