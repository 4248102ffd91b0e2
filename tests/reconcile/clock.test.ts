import { describe, expect, test } from 'vitest';
import { clockAgainstCard } from '../../src/reconcile/differences/card-clock.ts';
import { checkingOf } from '../../src/reconcile/differences/checking.ts';
import { DEFAULT_TOLERANCE } from '../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { lineAt, medianOf, robustLine } from '../../src/reconcile/pairing/robust-line.ts';
import { timecodeAt } from '../../src/time/followed-clock.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, detailOf, openOn, settle } from './check-card.ts';
import { filmDay, seeded } from './film-day.ts';

const RATE = 48_000;

/** The same card from a recorder whose clock reads `offset` seconds more and gains `ppm`, with taps late or early. */
function otherClock(
  files: readonly CardFile[],
  offset: number,
  ppm: number,
  tapSeconds = 0,
  seed = 1,
): CardFile[] {
  const random = seeded(seed);
  const first = files[0]!.start!;
  return files.map((file) => {
    const drift = ((file.start! - first) * ppm) / 1e6;
    const tap = (random() - 0.5) * 2 * tapSeconds * RATE;
    return { ...file, start: Math.round(file.start! + offset * RATE + drift + tap) };
  });
}

async function clockOf(takes: number, offset: number, ppm: number, tap: number, seed: number) {
  const filmed = filmDay({ takes, seed, fromHour: 8 });
  const day = filmed.day();
  const recordings = await recordCard(otherClock(cardOf(day), offset, ppm, tap, seed));
  const match = matchRecordings(day, recordings);
  const clock = clockAgainstCard(checkingOf(day, match, DEFAULT_TOLERANCE));
  return { filmed, day, match, recordings, clock: clock! };
}

describe('the clock of the log against the recorder', () => {
  test.each([
    [0, 1],
    [-0.8, 2],
    [12.5, 3],
    [-3601.25, 4],
    [3 * 3600, 5],
  ])('its offset of %f s is found, and is one difference (seed %i)', async (offset, seed) => {
    const { day, match, clock } = await clockOf(60, offset, 0, 0.2, seed);
    expect(match.pairs.length).toBe(cardOf(day).length);
    expect(clock.ppm).toBe(0);
    expect(Math.abs(clock.lastFrames - offset * 25)).toBeLessThanOrEqual(3);
    const codes = differencesOf(day, match).map(({ code }) => code);
    expect(codes).toEqual(Math.abs(offset) > 2 ? ['clock-apart'] : []);
  });

  test.each([
    [20, 1],
    [-35, 2],
    [30, 3],
  ])('its drift of %i ppm is found through taps a quarter of a second off (seed %i)', async (ppm, seed) => {
    const { day, match, clock } = await clockOf(160, 0.2, ppm, 0.25, seed);
    expect(match.pairs.length).toBe(cardOf(day).length);
    expect(Math.abs(clock.ppm - ppm)).toBeLessThan(Math.max(3, 4 * clock.ppmError));
    expect(differencesOf(day, match).map(({ code }) => code)).toEqual(['clock-drifts']);
    expect(clock.framesPerHour).toBeCloseTo(clock.ppm * 1e-6 * 3600 * 25, 9);
  });

  test('exactly: 10 ppm at 25 are 0.9 frames an hour', async () => {
    const { clock } = await clockOf(120, 0, 10, 0, 9);
    expect(clock.ppm).toBeCloseTo(10, 1);
    expect(clock.framesPerHour).toBeCloseTo(0.9, 2);
  });

  test('taking the starts of the files sets the whole log right in one action', async () => {
    const { filmed, recordings, day } = await clockOf(40, 90, 0, 0.2, 6);
    const [found] = openOn(day, recordings);
    settle(filmed.phone, byFile(found!));
    expect(openOn(filmed.day(), recordings)).toEqual([]);
  });

  test('the corrected clock shows what the recorder showed, from the phone times of Roll', async () => {
    const filmed = filmDay({ takes: 60, seed: 8 });
    const logged = [...filmed.day().takes.values()];
    const base = Date.UTC(2026, 9, 7, 7);
    for (const { id, start } of logged)
      if (start)
        filmed.phone.say({
          kind: 'take-described',
          take: id,
          fields: { rolledAt: base + (start.frames - 9 * 3600 * 25) * 40 },
        });
    const day = filmed.day();
    const recordings = await recordCard(otherClock(cardOf(day), 7, 30));
    const [apart, drifts] = openOn(day, recordings);
    expect([apart?.code, drifts?.code]).toEqual(['clock-apart', 'clock-drifts']);
    expect([apart?.was, drifts?.was]).toEqual([0, 0]);
    expect(detailOf(apart).by).toBe('phone');
    expect(detailOf(apart).ppm).toBeCloseTo(30, 0);
    const settlement = apart!.settlements.find(({ kind }) => kind === 'follow-recorder')!;
    settle(filmed.phone, settlement);
    const last = recordings.at(-1)!;
    const rolledAt = Math.max(...[...day.takes.values()].map((one) => one.rolledAt ?? 0));
    const shown = timecodeAt(filmed.day().clock!, rolledAt);
    expect(Math.abs(shown - Math.floor((last.start!.samples * 25) / RATE))).toBeLessThanOrEqual(1);
  });

  test('a wrong start or two are told by themselves and bend nothing', async () => {
    const day = filmDay({ takes: 40, seed: 3 }).day();
    const files = cardOf(day);
    const odd = files.map((file, at) =>
      at === 5 || at === 20 ? { ...file, start: file.start! + 4 * RATE } : file,
    );
    const found = openOn(day, await recordCard(odd));
    expect(found.map((one) => [one.code, detailOf(one).frames])).toEqual([
      ['start-differs', 100],
      ['start-differs', 100],
    ]);
  });

  test('a pre-roll is no late start (iXML 3.01, PRE_RECORD_SAMPLECOUNT)', async () => {
    const day = filmDay({ takes: 12, seed: 2 }).day();
    const files = cardOf(day).map((file) => ({
      ...file,
      start: file.start! - 6 * RATE,
      length: file.length + 6 * RATE,
      more: `<PRE_RECORD_SAMPLECOUNT>${6 * RATE}</PRE_RECORD_SAMPLECOUNT>`,
    }));
    const codes = openOn(day, await recordCard(files)).map(({ code }) => code);
    expect(codes).not.toContain('start-differs');
    expect(codes).not.toContain('clock-apart');
  });
});

describe('1001/1000', () => {
  test('in stamps: 24 frames counted where 23.976 was meant, 36 s at ten in the morning', async () => {
    const day = filmDay({ takes: 60, rate: '23.976', seed: 4 }).day();
    const files = cardOf(day).map((file) => ({ ...file, start: Math.round(file.start! / 1.001) }));
    const recordings = await recordCard(files);
    const match = matchRecordings(day, recordings);
    expect(match.pairs).toHaveLength(files.length);
    const [first] = differencesOf(day, match);
    expect(first).toMatchObject({ code: 'pulldown', is: '1000/1001', detail: { by: 'starts' } });
    expect(detailOf(first).ppm as number).toBeCloseTo(-999, 0);
  });

  test('in a clock: labels at 24 against 24000/1001 gain 3.6 s an hour', async () => {
    const day = filmDay({ takes: 60, rate: '24', seed: 4 }).day();
    const found = openOn(day, await recordCard(otherClock(cardOf(day), 0, 1000)));
    expect(found.map(({ code }) => code)).toContain('pulldown');
    expect(found.map(({ code }) => code)).not.toContain('clock-drifts');
  });

  test('in lengths: a minute of life at 48048 stamped 48000 lasts 60.06 s', async () => {
    const filmed = filmDay({ takes: 60, seed: 5 });
    const day = filmed.day();
    const files = cardOf(day).map((file) => ({ ...file, length: Math.round(file.length * 1.001) }));
    const found = openOn(day, await recordCard(files));
    expect(found.map((one) => [one.code, one.is, detailOf(one).by])).toEqual([
      ['pulldown', '1001/1000', 'lengths'],
    ]);
  });

  test('is not seen in an ordinary offset', async () => {
    const { day, match } = await clockOf(60, 36, 0, 0.2, 7);
    expect(differencesOf(day, match).map(({ code }) => code)).toEqual(['clock-apart']);
  });
});

describe('a robust line', () => {
  test('passes through the points but for the wild one', () => {
    const line = robustLine([
      { x: 0, y: 1 },
      { x: 1, y: 3 },
      { x: 2, y: 5 },
      { x: 3, y: 99 },
      { x: 4, y: 9 },
    ])!;
    expect(line.slope).toBe(2);
    expect(lineAt(line, 10)).toBe(21);
  });

  test.each([1, 2, 3, 4])('bears a quarter of wild points (seed %i)', (seed) => {
    const random = seeded(seed);
    const points = Array.from({ length: 100 }, (_, x) => ({
      x,
      y: random() < 0.25 ? random() * 1e6 : 3 * x + 7,
    }));
    expect(robustLine(points)!.slope).toBeCloseTo(3, 6);
  });

  test('needs two different places', () => {
    expect(robustLine([])).toBeUndefined();
    expect(
      robustLine([
        { x: 1, y: 1 },
        { x: 1, y: 2 },
      ]),
    ).toBeUndefined();
    expect([medianOf([]), medianOf([3, 1, 2]), medianOf([4, 1])]).toEqual([0, 2, 2.5]);
  });
});
