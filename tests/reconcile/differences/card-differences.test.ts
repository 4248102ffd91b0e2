import { describe, expect, test } from 'vitest';
import { cardDifferences } from '../../../src/reconcile/differences/card-differences.ts';
import { checkingOf } from '../../../src/reconcile/differences/checking.ts';
import { DAMAGE, DEFAULT_TOLERANCE, type Found } from '../../../src/reconcile/differences/difference.ts';
import { matchRecordings } from '../../../src/reconcile/pairing/match-recordings.ts';
import type { Recording, RecordingWarning } from '../../../src/wave/recording/recordings.ts';
import type { WaveWarning } from '../../../src/wave/warning.ts';
import { speaker } from '../../day/say.ts';
import { type CardFile, recordCard } from '../build-card.ts';

const RATE = 48_000;
const MS = RATE / 1000;
const START = 36_000 * RATE;
const FILE: CardFile = {
  name: 'a.wav',
  scene: '24B',
  take: '3',
  tape: '7A',
  start: START,
  length: 10 * RATE,
  tracks: [{ channel: 1, name: 'Boom' }],
  sampleRate: RATE,
  bits: 24,
};

const foundOn = (recordings: readonly Recording[]): Found[] => {
  const day = speaker().day();
  return cardDifferences(checkingOf(day, matchRecordings(day, recordings), DEFAULT_TOLERANCE));
};
const found = async (...files: Partial<CardFile>[]): Promise<Found[]> =>
  foundOn(await recordCard(files.map((file) => ({ ...FILE, ...file }))));

/** A second file that starts so many ms after the first one ends. */
const next = (ms: number, more: Partial<CardFile> = {}): Partial<CardFile> => ({
  name: 'b.wav',
  start: START + 10 * RATE + ms * MS,
  ...more,
});

describe('recordings over one another or torn apart', () => {
  test.each([
    [-1000, 'recordings-overlap', 1000],
    [-2, 'recordings-overlap', 2],
    [-1, undefined, undefined],
    [1, undefined, undefined],
    [2, 'recordings-gap', 2],
    [1999, 'recordings-gap', 1999],
    [2000, undefined, undefined],
  ])('%i ms from end to start: %s', async (ms, code, told) => {
    const [one, ...others] = await found({}, next(ms));
    expect(others).toEqual([]);
    expect(one?.code).toBe(code);
    if (one) {
      expect(one).toMatchObject({ was: 'a.wav', is: 'b.wav', aspect: 'a.wav', detail: { ms: told } });
      expect(one.recording?.files[0]?.name).toBe('b.wav');
    }
  });

  test.each<[string, Partial<CardFile>]>([
    ['scene', { scene: '24C' }],
    ['take', { take: '4' }],
    ['roll', { tape: '7B' }],
  ])('a gap before another %s is none', async (_, other) => {
    expect(await found({}, next(500, other))).toEqual([]);
  });

  test('a gap is none where the files do not say of which take they are', async () => {
    const { scene: _, ...sceneless } = FILE;
    const { take: __, ...takeless } = FILE;
    for (const file of [sceneless, takeless])
      expect(foundOn(await recordCard([file, { ...file, ...next(500) }]))).toEqual([]);
  });

  test('a copy lies over its original and is no overlap, a longer one is', async () => {
    const twin = { name: 'b.wav', scene: '99' };
    expect(await found({}, twin)).toEqual([]);
    expect((await found({}, { ...twin, length: 10 * RATE + 100 }))[0]).toMatchObject({
      code: 'recordings-overlap',
    });
    expect(await found({}, { ...twin, start: START + 100 * MS, length: 10 * RATE - 100 * MS })).toHaveLength(
      1,
    );
  });

  test('one within another is one overlap, and what follows is measured from the end of the longer', async () => {
    const codes = (
      await found(
        { length: 60 * RATE },
        { name: 'b.wav', scene: '25', start: START + 5 * RATE },
        { name: 'c.wav', scene: '26', start: START + 30 * RATE },
        { name: 'd.wav', scene: '27', start: START + 60 * RATE },
      )
    ).map(({ code, is, was }) => [code, was, is]);
    expect(codes).toEqual([
      ['recordings-overlap', 'a.wav', 'b.wav'],
      ['recordings-overlap', 'a.wav', 'c.wav'],
    ]);
  });

  test('only what was recorded on one roll, or where no roll is said on one day, can lie over one another', async () => {
    const { tape: _, ...rollless } = FILE;
    const other = { ...rollless, name: 'b.wav', scene: '25', start: START + RATE };
    expect(foundOn(await recordCard([rollless, other]))).toHaveLength(1);
    expect(foundOn(await recordCard([rollless, { ...other, date: '2026-10-08' }]))).toEqual([]);
    expect(await found({}, { name: 'b.wav', scene: '25', tape: '7B', start: START + RATE })).toEqual([]);
    expect(
      await found({}, { name: 'b.wav', scene: '25', date: '2026-10-08', start: START + RATE }),
    ).toHaveLength(1);
  });

  test('files without a start or a length lie nowhere', async () => {
    expect(await found({}, { name: 'b.wav', scene: '25', start: undefined })).toEqual([]);
    expect(await found({}, { name: 'b.wav', scene: '25', start: START + RATE, length: 0 })).toEqual([]);
  });
});

describe('what is odd in the files of a recording', () => {
  const withSet = async (...warnings: RecordingWarning[]): Promise<Found[]> =>
    foundOn((await recordCard([FILE])).map((one) => ({ ...one, warnings })));

  test('each warning of a set becomes its difference', async () => {
    expect(await withSet({ code: 'set-incomplete', expected: 3, found: 1 })).toMatchObject([
      { code: 'file-set-incomplete', was: 3, is: 1, aspect: undefined },
    ]);
    expect(await withSet({ code: 'set-lengths-differ', lengths: [5, 6] })).toMatchObject([
      { code: 'files-disagree', was: 'length', is: ['5', '6'], aspect: undefined },
    ]);
    expect(await withSet({ code: 'set-values-differ', field: 'note', values: ['a', 'b'] })).toMatchObject([
      { code: 'files-disagree', was: 'note', is: ['a', 'b'], aspect: 'note' },
    ]);
    expect(await withSet({ code: 'parts-do-not-meet', after: 'x.wav', samples: 7 })).toMatchObject([
      { code: 'parts-gap', was: 0, is: 7, aspect: 'x.wav' },
    ]);
    expect(await withSet({ code: 'parts-do-not-meet', after: 'x.wav', samples: -7 })).toMatchObject([
      { code: 'parts-overlap', was: 0, is: 7, aspect: 'x.wav' },
    ]);
    expect(await withSet({ code: 'file-twice', names: ['copy.wav'] })).toMatchObject([
      { code: 'file-twice', was: 'a.wav', is: ['copy.wav'], aspect: undefined },
    ]);
  });

  const withWarnings = async (...warnings: WaveWarning[]): Promise<Found[]> =>
    foundOn(
      (await recordCard([FILE])).map((one) => ({
        ...one,
        files: one.files.map((file) => ({ ...file, warnings })),
      })),
    );

  test('each kind of warning of a file is told once, with the first of them and how many there were', async () => {
    const first: WaveWarning = { code: 'chunk-past-end', at: 5 };
    expect(
      await withWarnings(first, { code: 'text-not-ascii', at: 9 }, { code: 'chunk-past-end', at: 7 }),
    ).toEqual([
      expect.objectContaining({
        code: 'file-damaged',
        aspect: 'chunk-past-end a.wav',
        was: 'a.wav',
        is: 'chunk-past-end',
        detail: { warning: first, count: 2 },
      }),
      expect.objectContaining({ code: 'file-warning', detail: { warning: expect.anything(), count: 1 } }),
    ]);
  });

  test('warnings that may mean missing sound are damage, and no others', () => {
    expect([...DAMAGE].sort()).toEqual([
      'chunk-past-end',
      'data-missing',
      'data-not-closed',
      'data-size-wrapped',
      'file-ends-early',
      'fmt-damaged',
      'fmt-missing',
    ]);
  });
});
