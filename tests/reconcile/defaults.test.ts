import { describe, expect, test } from 'vitest';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { openOn } from './check-card.ts';
import { filmDay } from './film-day.ts';

const SECOND = 48_000;

/** The card of a recorder that nobody set up: one scene, a counter, the date as roll, its own file names. */
const atDefaults = (files: readonly CardFile[]): CardFile[] =>
  files.map((file, at) => ({
    ...file,
    name: `20261007_${String(at + 1).padStart(3, '0')}.WAV`,
    scene: 'T',
    take: String(at + 1),
    tape: '20261007',
    note: '',
    types: [],
    tracks: file.tracks.map((track) => ({ ...track, name: `Tr ${track.channel}` })),
  }));

const filesOf = (match: ReturnType<typeof matchRecordings>): string[] =>
  match.pairs.map(({ recording }) => recording.files[0]!.name);

describe('a recorder left at its defaults', () => {
  test.each([1, 2, 3])('is matched whole by start and length, with no question (seed %i)', async (seed) => {
    const day = filmDay({ takes: 72, seed }).day();
    const files = atDefaults(cardOf(day));
    const recordings = await recordCard(files);
    const match = matchRecordings(day, recordings);
    expect(match.questions).toEqual([]);
    expect(filesOf(match)).toEqual(files.map(({ name }) => name));
    expect(match.takesWithout).toEqual([]);
    const codes = openOn(day, recordings).map((one) =>
      one.code === 'field-never-changes' ? `${one.code} ${one.detail.field}` : one.code,
    );
    expect(codes.filter((code) => code !== 'circled-differs').sort()).toEqual([
      'field-never-changes roll',
      'field-never-changes scene',
      'field-never-changes take',
      'file-names-differ',
    ]);
  });

  test.each([
    [3 * 3600 + 17, 1],
    [-41, 2],
    [7.5, 3],
  ])('is matched with its clock %f s off too (seed %i)', async (offset, seed) => {
    const day = filmDay({ takes: 72, seed }).day();
    const files = atDefaults(cardOf(day)).map((file) => ({
      ...file,
      start: Math.round(file.start! + offset * SECOND),
    }));
    const match = matchRecordings(day, await recordCard(files));
    expect(match.questions).toEqual([]);
    expect(filesOf(match)).toEqual(files.map(({ name }) => name));
  });

  test.each([1, 2, 3])('is matched by length and order without any timecode (seed %i)', async (seed) => {
    const day = filmDay({ takes: 72, seed }).day();
    const files = atDefaults(cardOf(day)).map((file) => ({ ...file, start: undefined }));
    const match = matchRecordings(day, await recordCard(files));
    expect(match.questions).toEqual([]);
    expect(filesOf(match)).toEqual(files.map(({ name }) => name));
  });

  test('without a timecode and with a file missing names that take', async () => {
    const day = filmDay({ takes: 40, seed: 4 }).day();
    const files = atDefaults(cardOf(day)).map((file) => ({ ...file, start: undefined }));
    const match = matchRecordings(day, await recordCard(files.toSpliced(17, 1)));
    const sounding = [...day.takes.values()].filter(({ kind }) => kind !== 'mos');
    expect(match.takesWithout).toEqual([sounding[17]!.id]);
    expect(filesOf(match)).toEqual(files.toSpliced(17, 1).map(({ name }) => name));
  });

  test('is told what is truly missing and what nobody logged', async () => {
    const day = filmDay({ takes: 40, seed: 4 }).day();
    const files = atDefaults(cardOf(day));
    const extra = {
      ...files[20]!,
      name: 'X.WAV',
      start: files[20]!.start! + files[20]!.length + 6 * SECOND,
      length: 9 * SECOND,
    };
    const open = openOn(day, await recordCard([...files.toSpliced(5, 1), extra]));
    const lost = open.filter(({ severity }) => severity === 'lost').map(({ code }) => code);
    expect(lost).toEqual(['take-not-recorded', 'recording-not-logged']);
  });
});
