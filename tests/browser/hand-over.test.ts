import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { openStage, type Stage } from './harness.ts';
import { tab, tap } from './tapping.ts';

const NIGHT = '2026-11-20T03:10:00Z';
const SLIP =
  'Card 1 (2 checked copies), Bag card (no checked copy), Card 2 (no checked copy), Backup card (no checked copy) to S. Okafor, data wrangler, 2026-11-20 04:10';

const flat = (text: string | null): string => (text ?? '').replaceAll(/\s+/g, ' ');

describe('handing cards over', () => {
  let stage: Stage;
  beforeAll(async () => {
    needPoppler();
    stage = await openStage({ clock: NIGHT, viewport: { width: 360, height: 640 } });
    await tap(stage.page, 'Sample day');
    await stage.page.locator('.rows .row').first().waitFor();
    await tab(stage.page, 'Wrap');
    await stage.page.locator('.report-text').waitFor();
  });
  afterAll(() => stage?.close());

  const dialog = () => stage.page.getByRole('dialog');
  const field = (name: string) => dialog().getByLabel(name, { exact: true });
  const open = async (): Promise<void> => {
    await tap(stage.page, 'Hand over');
    await dialog().waitFor();
  };
  const save = (): Promise<void> => dialog().getByRole('button', { name: 'Hand over' }).tap();
  const report = async (): Promise<string> =>
    flat(await stage.page.locator('.report-text').first().textContent());

  test('is filled in with the cards of the day, and warns of what was not checked and not copied', async () => {
    await open();
    for (const name of ['Card 1', 'Card 2'])
      expect(await dialog().getByRole('button', { name, exact: true }).getAttribute('aria-pressed')).toBe(
        'true',
      );
    // 70 of the cart, 2 of the bag, 7 of the backup.
    expect(await field('Files').inputValue()).toBe('79');
    const warned = flat(await dialog().getByRole('status').last().textContent());
    expect(warned).toContain('The files were not checked against the log.');
    expect(warned).toContain('Card 2 has no checked copy.');
    expect(warned).not.toContain('Card 1 has');
  });

  test('is signed with a finger, which can be cleared', async () => {
    const { page } = stage;
    await field('To').fill('S. Okafor');
    await field('Role').fill('data wrangler');
    const pad = dialog().locator('.signature svg');
    const path = () => pad.locator('.signature-strokes').getAttribute('d');
    await pad.scrollIntoViewIfNeeded();
    const { x, y } = (await pad.boundingBox())!;
    const draw = async (): Promise<void> => {
      await page.mouse.move(x + 40, y + 60);
      await page.mouse.down();
      for (let step = 1; step <= 10; step += 1) await page.mouse.move(x + 40 + step * 12, y + 60 - step * 4);
      await page.mouse.up();
    };
    await draw();
    await expect.poll(path).toMatch(/^M\d+(\.\d+)? .*L/);
    await dialog().getByRole('button', { name: 'Clear' }).tap();
    await expect.poll(path).toBe('');
    await draw();
    await expect.poll(path).not.toBe('');
    await save();
    await expect.poll(() => dialog().count()).toBe(0);
    await expect.poll(report).toContain(`HANDED OVER - ${SLIP}: 79 files, 7.16 GB; not checked; signed`);
  });

  test('is in the pages with the signature, in the web page, and not in the table', async () => {
    const { page } = stage;
    await tap(page, 'One web page');
    await page.getByText('sound report A.html').waitFor();
    const got = new Map<string, Promise<Buffer>>();
    page.on('download', (one) =>
      got.set(
        one.suggestedFilename().split('.').at(-1)!,
        one.path().then((path) => readFileSync(path)),
      ),
    );
    await tap(page, 'Download the report');
    await expect.poll(() => [...got.keys()].sort()).toEqual(['csv', 'html', 'pdf', 'txt']);
    expect(flat(pageTexts((await got.get('pdf'))!).join(' '))).toContain(`Handed over ${SLIP}`);
    const html = (await got.get('html'))!.toString('utf8');
    expect(html).toContain(SLIP);
    expect(html).toMatch(/aria-label="Signature"[^>]*><path d="M\d+ \d+L/);
    expect((await got.get('csv'))!.toString('utf8')).not.toContain('Okafor');
  });

  test('can be signed by keys, stands on the line after a reload, and is taken back by Undo', async () => {
    const { page } = stage;
    await open();
    // What went already is not offered once more.
    expect(
      await dialog().getByRole('button', { name: 'Card 1', exact: true }).getAttribute('aria-pressed'),
    ).toBe('false');
    await field('Another card or drive').fill('Drive 3');
    await field('Or type the name to sign').fill('Sue O.');
    await field('Or type the name to sign').press('Enter');
    await expect.poll(report).toContain('Drive 3 (no checked copy) to S. Okafor');
    expect(await report()).toContain('signed Sue O.');
    await stage.waitSaved();
    await stage.reload();
    await tab(page, 'Line');
    await page.getByText('Drive 3 handed over to S. Okafor').waitFor();
    await tap(page, /^Undo/);
    await tab(page, 'Wrap');
    await page.locator('.report-text').waitFor();
    await expect.poll(report).not.toContain('Drive 3');
    expect(await report()).toContain(SLIP);
  });
});
