import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FactOf } from '../../src/facts/fact.ts';
import { frameOfLabel } from '../../src/time/label.ts';
import { decoded } from '../ltc/decoded.ts';
import { sound } from '../ltc/encode.ts';
import { axeFindings } from './axe-findings.ts';
import { onStage, openStage, type Stage } from './harness.ts';
import { layoutFaults } from './layout-faults.ts';
import { type Overheard, overhear, recordingToHear } from './recordings-to-hear.ts';
import { storedFacts } from './stored-facts.ts';
import { startDay, tap } from './tapping.ts';

/** WCAG 2.2, A and AA. */
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const DAY_BITS = '00991231';

/** Two boxes, one after the other: the second is 7.25 frames ahead of the first, and has other user bits. */
function twoBoxes(): Float32Array {
  const first = frameOfLabel({ hours: 10, minutes: 0, seconds: 0, frames: 0 }, '25');
  const [ten, twenty] = [14 * 25, 20 * 25];
  const recorder = sound(first, ten, '25', { level: 0.4 });
  const slate = sound(first + ten + 8, twenty, '25', { level: 0.4, start: 0.75 * 1920, userBits: DAY_BITS });
  const both = new Float32Array(recorder.length + slate.length);
  both.set(recorder);
  both.set(slate, recorder.length);
  return both;
}

/** Frames since midnight that the recording says at a moment, by what was overheard; fewer where the sound came late. */
function framesAt({ samples, sampleRate, dateMs }: Overheard, atMs: number): number {
  const last = decoded({ samples: Float32Array.from(samples), sampleRate }).at(-1);
  if (!last) return Number.NEGATIVE_INFINITY;
  const startedMs = dateMs - ((samples.length - last.start) / sampleRate) * 1000;
  return frameOfLabel(last.label, '25') + (atMs - startedMs) / 40;
}

const openHearing = async (page: Page): Promise<void> => {
  await tap(page, /^Sync to recorder/);
  await tap(page, 'Hear timecode');
};

const goToUpkeep = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    location.hash = location.hash.replace(/[^/]*$/, 'upkeep');
  });
  await page.locator('main[data-tab="upkeep"]').waitFor();
};

const factsOf = (page: Page): Promise<unknown[]> => {
  const [, day = ''] = /day\/([^/]+)/.exec(page.url()) ?? [];
  return storedFacts(page, day);
};

const figure = (page: Page, name: string): Promise<string> =>
  page.evaluate((wanted) => {
    const titles = [...document.querySelectorAll('.hearing-figures dt')];
    return titles.find(({ textContent }) => textContent === wanted)?.nextElementSibling?.textContent ?? '';
  }, name);

describe('a phone that hears a recorder', () => {
  const recording = recordingToHear(twoBoxes());
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage({ hears: recording.path, before: overhear });
    await startDay(stage.page);
  });
  afterAll(async () => {
    await stage?.close();
    recording.remove();
  });

  test('reads it, and ties its clock within a frame of what the recording says at that moment', async () => {
    const { page } = stage;
    await openHearing(page);
    await tap(page, /^Listen$/);
    await expect
      .poll(() => figure(page, 'Rate'))
      .toMatch(/^25 fps \(measured (24\.99|25\.00)\d fps ± \d+ ppm\)$/);
    await expect.poll(() => figure(page, 'Frames')).toMatch(/^\d\d+ frames read, \d+ lost$/);
    await page.getByRole('button', { name: 'Sync to this' }).waitFor();
    expect(await axeFindings(page, LEVELS)).toEqual([]);
    expect(await layoutFaults(page)).toEqual({ small: [], outside: [], clipped: [], thrownUnder: [] });
    const truth = await page.evaluate(() => globalThis.heardLately!());
    await tap(page, 'Sync to this');
    await page
      .getByText(/^Synced by ear at 10:00:/)
      .first()
      .waitFor();
    await stage.waitSaved();
    const facts = (await factsOf(page)) as FactOf<'clock-followed'>[];
    const tie = facts.find(({ kind }) => kind === 'clock-followed')!;
    expect(tie.heard!.frames).toBeGreaterThan(49);
    const said = Math.max(...truth.map((one) => framesAt(one, tie.atMs)));
    console.log(
      `Tied ${(tie.frames - said).toFixed(2)} frames off, spread ${tie.heard!.spreadMs.toFixed(2)} ms`,
    );
    expect(Math.abs(tie.frames - said)).toBeLessThan(1);
  });

  test('compares two boxes 7.25 frames apart to a tenth of a frame', async () => {
    const { page } = stage;
    await goToUpkeep(page);
    await tap(page, 'Add device');
    await page.getByLabel('Name', { exact: true }).fill('Slate 1');
    await tap(page, /^Save$/);
    await tap(page, /^Timecode/);
    await tap(page, 'Compare by ear');
    await tap(page, /^Listen$/);
    // Which of the two is playing, the user bits say; the first plays from when the microphone opens.
    await expect.poll(() => figure(page, 'User bits')).toBe('00 00 00 00');
    await tap(page, 'Hear Recorder');
    await page.getByText(/^heard; the others are compared with it$/).waitFor();
    await expect.poll(() => figure(page, 'User bits')).toBe('00 99 12 31');
    await tap(page, 'Hear Slate 1');
    await page
      .getByText(/^7\.\d\d frames ahead ± 0\.\d\d/)
      .first()
      .waitFor();
    const pairs = page.locator('.pairs-table tbody');
    await expect
      .poll(() => pairs.allInnerTexts())
      .toEqual([expect.stringMatching(/^Recorder, Slate 1\s+\+7\.\d\d ±\s0\.\d\d\s+\+2\d\d\.\d ±\s\d/)]);
    expect(await axeFindings(page, LEVELS)).toEqual([]);
    expect(await layoutFaults(page)).toEqual({ small: [], outside: [], clipped: [], thrownUnder: [] });
    await stage.waitSaved();
    const facts = (await factsOf(page)) as FactOf<'timecode-compared'>[];
    const { offMs, doubtMs, device, from } = facts.find(({ kind }) => kind === 'timecode-compared')!;
    console.log(`${(offMs / 40).toFixed(3)} frames apart, give or take ${(doubtMs / 40).toFixed(3)}`);
    expect(Math.abs(offMs / 40 - 7.25)).toBeLessThan(0.1);
    expect(device).not.toBe(from);
    await tap(page, /^Close$/);
    await page.getByText(/^7\.\d\d frames ahead .* compared \d\d:\d\d with Recorder/).waitFor();
  });

  test('is served as a page whose microphone is its own alone', async () => {
    const { page } = stage;
    const served = await page.request.get(page.url());
    expect(served.headers()['permissions-policy']).toContain('microphone=(self)');
  });

  test('says in words why it cannot listen', async () => {
    const { page } = stage;
    await openHearing(page);
    for (const [error, words] of [
      ['NotAllowedError', /^The microphone is not allowed/],
      ['NotFoundError', /^No microphone was found/],
      ['NotReadableError', /^Another app is using the microphone/],
    ] as const) {
      await page.evaluate((name) => {
        navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('refused', name));
      }, error);
      await tap(page, /^Listen$/);
      await page.getByRole('dialog').getByText(words).waitFor();
    }
    await tap(page, /^Close$/);
  });
});

test('a recorder at another rate than the day is named at once, and nothing is tied to it', async () => {
  const hears = resolve(import.meta.dirname, '../ltc/recordings/clean-2997-nondrop.wav');
  await onStage({ hears }, async ({ page }) => {
    await startDay(page);
    await openHearing(page);
    await tap(page, /^Listen$/);
    await page.getByRole('alert').getByText('Runs at 29.97 fps. The day is at 25 fps.').waitFor();
    await expect
      .poll(() => page.getByRole('button', { name: 'Not the rate of the day' }).isDisabled())
      .toBe(true);
  });
});
