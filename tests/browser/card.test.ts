import { closeSync, ftruncateSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { loadSampleFile, sampleText } from '../../sample-days/load.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { bext, fmt, ixml, join as joined, u32 } from '../wave/build-wave.ts';
import { onStage, type Stage, type StageOptions } from './harness.ts';
import { paste } from './tapping.ts';

interface Recorded {
  readonly name: string;
  readonly scene: string;
  readonly take: string;
  /** Hours, minutes, seconds and frames at 25. */
  readonly start: readonly [number, number, number, number];
  readonly seconds: number;
  readonly circled: boolean;
  readonly tracks: readonly string[];
  /** The recorder, as it calls itself. */
  readonly originator?: string;
}

/** The recordings of the small sample day as its golden lines say, by hand. */
const CARD: readonly Recorded[] = [
  {
    name: '3T1.wav',
    scene: '3',
    take: '1',
    start: [9, 12, 7, 0],
    seconds: 56,
    circled: false,
    tracks: ['Lieve', 'Opa'],
  },
  {
    name: '3T2.wav',
    scene: '3',
    take: '2',
    start: [9, 18, 32, 10],
    seconds: 72,
    circled: true,
    tracks: ['Lieve', 'Opa'],
  },
  {
    name: '3T3.wav',
    scene: '3',
    take: '3',
    start: [9, 24, 12, 0],
    seconds: 70.52,
    circled: true,
    tracks: ['Lieve', 'Opa'],
  },
  {
    name: '3AT1.wav',
    scene: '3A',
    take: '1',
    start: [9, 51, 2, 0],
    seconds: 40,
    circled: false,
    tracks: ['Lieve', 'Auctioneer'],
  },
  {
    name: '3AT2.wav',
    scene: '3A',
    take: '2',
    start: [9, 55, 22, 5],
    seconds: 75,
    circled: true,
    tracks: ['Lieve', 'Auctioneer'],
  },
  {
    name: '3AT3.wav',
    scene: '3A',
    take: '3',
    start: [10, 2, 2, 0],
    seconds: 90,
    circled: true,
    tracks: ['Lieve', 'Auctioneer'],
  },
];

const RATE = 48_000;
const CHANNELS = 4;

/** Writes a recorder's file with real headers and silence that takes up no room on the disk. */
function writeRecording(
  folder: string,
  { name, scene, take, start, seconds, circled, tracks, originator = '' }: Recorded,
): string {
  const [hours, minutes, secs, frames] = start;
  const timeReference = (((hours * 60 + minutes) * 60 + secs) * 25 + frames) * (RATE / 25);
  const list = ['Mix', 'Boom', ...tracks].map((track, at) => {
    const channel = at < 2 ? at + 1 : at + 2;
    return `<TRACK><CHANNEL_INDEX>${channel}</CHANNEL_INDEX><INTERLEAVE_INDEX>${at + 1}</INTERLEAVE_INDEX><NAME>${track}</NAME></TRACK>`;
  });
  const chunks = [
    fmt({ channels: CHANNELS, sampleRate: RATE, bits: 24 }),
    bext({ date: '2026-05-12', time: '09:00:00', timeReference, originator }),
    ixml(
      `<PROJECT>The Orchard Ledger</PROJECT><SCENE>${scene}</SCENE><TAKE>${take}</TAKE><TAPE>OL2</TAPE>` +
        `<CIRCLED>${circled ? 'TRUE' : 'FALSE'}</CIRCLED>` +
        `<SPEED><TIMECODE_RATE>25/1</TIMECODE_RATE><TIMECODE_FLAG>NDF</TIMECODE_FLAG></SPEED>` +
        `<TRACK_LIST><TRACK_COUNT>${list.length}</TRACK_COUNT>${list.join('')}</TRACK_LIST>`,
    ),
  ];
  const text = (word: string): Uint8Array => new TextEncoder().encode(word);
  const heads = chunks.map(({ id, payload }) => {
    const pad = new Uint8Array(payload.byteLength % 2);
    return joined(text(id), u32(payload.byteLength), payload, pad);
  });
  const bytes = Math.round(seconds * RATE) * CHANNELS * 3;
  const before = heads.reduce((sum, head) => sum + head.byteLength, 0);
  const size = 4 + before + 8 + bytes;
  const path = join(folder, name);
  const file = openSync(path, 'w');
  writeSync(file, joined(text('RIFF'), u32(size), text('WAVE'), ...heads, text('data'), u32(bytes)));
  ftruncateSync(file, size + 8);
  closeSync(file);
  return path;
}

async function onCardOf(
  recorded: readonly Recorded[],
  work: (stage: Stage, paths: string[]) => Promise<void>,
  options: StageOptions = {},
) {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-card-'));
  try {
    const paths = recorded.map((one) => writeRecording(folder, one));
    await onStage({ clock: '2026-05-12T18:00:00Z', ...options }, (stage) => work(stage, paths));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The small day with a backup that rolls along at all its takes. */
function backedUpText(): string {
  const { day, facts } = loadSampleFile('small');
  const before = foldDay(day, facts).takeOrder[0]!;
  const saying = {
    day,
    at: Date.UTC(2026, 4, 12, 17),
    zone: 120,
    nextId: idSource('phonez00000', 900_000).next,
  };
  const said = stampFacts(
    [
      { kind: 'day-described', fields: { recorder: 'Cart' } },
      { kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } },
      { kind: 'recorders-rolling', recorders: ['recorder', 'b'], before },
    ],
    saying,
  );
  return writeDayFile(day, 'small', [...facts, ...said]);
}

async function openSmallDay({ page }: Stage, text = sampleText('small')): Promise<void> {
  await page.getByRole('button', { name: 'Import day file' }).tap();
  await paste(page.getByLabel('Or paste the text'), text);
  await page.getByRole('button', { name: 'Import what was pasted' }).tap();
  await page.locator('.dock').waitFor();
}

const goToCard = async ({ page }: Stage): Promise<void> => {
  await page.evaluate(() => {
    location.hash = location.hash.replace(/\/\w+$/, '/card');
  });
  await page.getByRole('heading', { name: 'Card check' }).waitFor();
};

describe('the card check', () => {
  test('finds nothing where the card is as the log, with no signal', async () => {
    const work = async (stage: Stage, paths: string[]): Promise<void> => {
      const { page } = stage;
      await stage.loseSignal();
      await openSmallDay(stage);
      await goToCard(stage);
      await page.getByLabel('Choose files').setInputFiles(paths);
      await expect.poll(() => page.getByLabel('The card').textContent()).toContain('6 are takes of the log');
      const open = await page.locator('.difference').allTextContents();
      expect(open).toEqual([]);
      await page.getByRole('button', { name: 'Mark card checked' }).tap();
      await stage.waitSaved();
      await expect.poll(() => page.getByLabel('The card').textContent()).toContain('checked against 6 files');
    };
    await onCardOf(CARD, work, { worker: true });
  });

  test('names what differs and settles each in one tap, and undo takes it back', async () => {
    // On the card: 3/1 is missing, an unlogged 3A/4, another circle on 3A/1, and track 5 named differently in 3A/3.
    const changed = CARD.filter(({ name }) => name !== '3T1.wav').map((one) => {
      if (one.name === '3AT1.wav') return { ...one, circled: true };
      return one.name === '3AT3.wav' ? { ...one, tracks: ['Lieve', 'Opa'] } : one;
    });
    const extra: Recorded = {
      ...CARD[5]!,
      name: '3AT4.wav',
      take: '4',
      start: [10, 9, 0, 0],
      seconds: 30,
      tracks: ['Lieve', 'Auctioneer'],
    };
    await onCardOf([...changed, extra], async (stage, paths) => {
      const { page } = stage;
      const differences = page.locator('.difference');
      const one = (words: string) => differences.filter({ hasText: words });
      await openSmallDay(stage);
      await goToCard(stage);
      await page.getByLabel('Choose files').setInputFiles(paths);
      await expect.poll(() => differences.count()).toBe(4);
      await stage.screenshot('card-differences');
      for (const words of [
        'Logged, but not on the card',
        'Recorded, but not logged',
        'Circled on the card only',
        'Track 5 has a different name',
      ]) {
        expect(await one(words).count(), words).toBe(1);
      }
      await one('Recorded, but not logged').getByRole('button', { name: 'Log it as a take' }).tap();
      await expect.poll(() => differences.count()).toBe(3);
      await one('Circled on the card only').getByRole('button', { name: 'Use the card' }).tap();
      await expect.poll(() => differences.count()).toBe(2);
      await one('Track 5 has a different name').getByRole('button', { name: 'Keep the log' }).tap();
      await expect.poll(() => differences.count()).toBe(1);
      await one('Logged, but not on the card').getByRole('button', { name: 'File missing' }).tap();
      await expect.poll(() => differences.count()).toBe(0);
      await stage.waitSaved();

      await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
      const report = (await page.locator('.report-text').textContent()) ?? '';
      expect(report).toContain('3A/4');
      expect(report).toMatch(/\(3A\/1\)/);
      expect(report).toContain('file missing');

      await page.getByRole('link', { name: 'Line', exact: true }).tap();
      for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: 'Undo' }).first().tap();
      await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
      await expect.poll(() => page.locator('.report-text').textContent()).not.toContain('3A/4');
    });
  });

  test('keeps the check while a take is opened, and while other pages are', async () => {
    const changed = CARD.map((one) => ({ ...one, circled: !one.circled }));
    await onCardOf(changed, async (stage, paths) => {
      const { page } = stage;
      const differences = page.locator('.difference');
      await openSmallDay(stage);
      await goToCard(stage);
      await page.getByLabel('Choose files').setInputFiles(paths);
      await expect.poll(() => differences.count()).toBe(2);
      await differences.first().getByRole('button', { name: 'One by one' }).tap();
      await page.getByRole('button', { name: 'Open 3/1' }).tap();
      await page.getByRole('dialog').waitFor();
      await stage.screenshot('card-take-opened');
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
      await expect.poll(() => differences.count()).toBe(2);
      await page.getByRole('link', { name: 'Line', exact: true }).tap();
      await page.getByRole('button', { name: 'Undo' }).first().waitFor();
      await goToCard(stage);
      await expect.poll(() => differences.count()).toBe(2);
      await differences.first().getByRole('button', { name: 'Use the card', exact: true }).tap();
      await expect.poll(() => differences.count()).toBe(1);
      await stage.screenshot('card-causes');
      await stage.waitSaved();
      await page.reload();
      await page.getByRole('heading', { name: 'Card check' }).waitFor();
      await expect.poll(() => differences.count()).toBe(1);
    });
  });

  test('gives the cards of two recorders to each, and says which one did not roll', async () => {
    const by =
      (originator: string, more: Partial<Recorded> = {}) =>
      (one: Recorded) => ({
        ...one,
        originator,
        ...more,
      });
    const cart = CARD.map(by('CART 32'));
    const backup = CARD.slice(1).map((one) => by('FIELD 8')({ ...one, name: `B_${one.name}` }));
    const work = async (stage: Stage, paths: string[]): Promise<void> => {
      const { page } = stage;
      const differences = page.locator('.difference');
      const pressed = async (group: RegExp) =>
        page.getByRole('group', { name: group }).locator('[aria-pressed="true"]').allTextContents();
      await openSmallDay(stage, backedUpText());
      await goToCard(stage);
      await page.getByLabel('Choose files').setInputFiles(paths);
      await expect.poll(() => pressed(/6 recordings by CART 32/)).toEqual(['Cart']);
      expect(await pressed(/5 recordings by FIELD 8/)).toEqual(['Backup']);
      await expect.poll(() => page.getByLabel('The card').textContent()).toContain('5 also there');
      expect(await differences.allTextContents()).toEqual([
        expect.stringContaining('1 take not on the card, though logged as rolling (Backup)'),
      ]);
      await stage.screenshot('cards-of-two');

      // Whose they are can be said by hand, is kept over a reload, and said again.
      const choose = (name: string) =>
        page
          .getByRole('group', { name: /by FIELD 8/ })
          .getByRole('button', { name })
          .tap();
      await choose('Cart');
      await expect.poll(() => pressed(/by FIELD 8/)).toEqual(['Cart']);
      await stage.waitSaved();
      await page.reload();
      await expect.poll(() => pressed(/by FIELD 8/)).toEqual(['Cart']);
      await choose('Backup');
      await differences.first().getByRole('button', { name: 'It did not roll on 3/1' }).tap();
      await expect.poll(() => differences.count()).toBe(0);
      await page.getByRole('button', { name: 'Mark card checked' }).tap();
      await stage.waitSaved();
      await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
      await expect
        .poll(async () => ((await page.locator('.report-text').textContent()) ?? '').replaceAll(/\s+/g, ' '))
        .toContain('Cart 6 takes; Backup 5 takes');
    };
    await onCardOf([...cart, ...backup], work);
  });

  test('reads and compares a card of 632 mono files in five seconds', async () => {
    const monos = Array.from({ length: 79 }, (_, take) =>
      Array.from({ length: 8 }, (_, track) => ({
        ...CARD[0]!,
        name: `9T${take + 1}_${track + 1}.wav`,
        scene: '9',
        take: String(take + 1),
        start: [11 + Math.floor(take / 30), (take * 2) % 60, 0, 0] as const,
        seconds: 40 + take,
      })),
    ).flat();
    await onCardOf(monos, async (stage, paths) => {
      const { page } = stage;
      await openSmallDay(stage);
      await goToCard(stage);
      await page.evaluate(() => {
        document.addEventListener('change', () => performance.mark('chosen'), { capture: true, once: true });
        new MutationObserver(() => {
          if (
            document.querySelector('[aria-label="The card"]') &&
            performance.getEntriesByName('shown').length === 0
          )
            performance.mark('shown');
        }).observe(document.body, { childList: true, subtree: true });
      });
      await page.getByLabel('Choose files').setInputFiles(paths);
      await expect.poll(() => page.getByLabel('The card').textContent()).toContain('632 files');
      const took = await page.evaluate(() => performance.measure('card', 'chosen', 'shown').duration);
      expect(took).toBeGreaterThan(0);
      expect(took).toBeLessThan(5000);
    });
  });

  test('says in words what is no recording, and starts a log from a card', async () => {
    await onCardOf(CARD, async (stage, paths) => {
      const { page } = stage;
      await page.getByRole('button', { name: 'New day' }).tap();
      await page.getByRole('button', { name: 'Start the day' }).tap();
      await page.getByRole('heading', { name: 'Set up the rig' }).waitFor();
      await goToCard(stage);
      await page.getByLabel('Choose files').setInputFiles([
        {
          name: 'notes.wav',
          mimeType: 'audio/wav',
          buffer: Buffer.from('not a wave file at all, only words'),
        },
        { name: 'empty.wav', mimeType: 'audio/wav', buffer: Buffer.alloc(0) },
      ]);
      await page.getByText('2 files not read').waitFor();
      await page.getByLabel('Choose files').setInputFiles(paths);
      await page.getByRole('button', { name: 'Start the log from the card' }).tap();
      await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
      const report = (await page.locator('.report-text').textContent()) ?? '';
      for (const { scene, take } of CARD) expect(report).toContain(`${scene}/${take}`);
      expect(report).toContain('The Orchard Ledger');
      expect(report).toContain('Auctioneer');
    });
  });
});
