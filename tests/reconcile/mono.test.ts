import { describe, expect, test } from 'vitest';
import { filesOfTakes } from '../../src/day/files/take-files.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { notesFromCard, startLogFromCard } from '../../src/reconcile/start-log.ts';
import { reportOf } from '../../src/report/model.ts';
import { differenceWords } from '../../src/ui/card/difference-words.ts';
import { sideWords } from '../../src/ui/card/side-words.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_RIG } from '../day/small-rig.ts';
import { MIXES_BY_WORD } from '../report/mixes-by-word.ts';
import { cardOf, monoCard, recordCard } from './build-card.ts';
import { byFile, choiceOf, openOn, settle, told } from './check-card.ts';
import { filmDay } from './film-day.ts';

/** A filmed day, and the card of its poly files. */
function filmed(takes = 8, fileLayout: 'mono' | 'poly' = 'mono') {
  const film = filmDay({ takes, seed: 11 });
  const files = cardOf(film.day());
  film.phone.say({ kind: 'day-described', fields: { fileLayout } });
  return { ...film, files };
}

const fileNames = (day: ReturnType<ReturnType<typeof speaker>['day']>): string[] =>
  [...filesOfTakes(day).values()].flatMap((files) => files.map(({ name }) => name));

describe('a card of mono files', () => {
  test('has the files that the report names, and differs in nothing', async () => {
    const { day, files } = filmed(20);
    const monos = monoCard(files);
    expect(fileNames(day())).toEqual(monos.map(({ name }) => name));
    expect(reportOf(day()).totals.files).toBe(monos.length);
    expect(told(day(), openOn(day(), await recordCard(monos)))).toEqual([]);
  });

  test('of mixes L and R is marked as the report says', async () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, MIXES_BY_WORD, { kind: 'day-described', fields: { fileLayout: 'mono' } });
    phone.say({ kind: 'track-named', track: 'tr2', name: 'Door' }, take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const tracks = ['L', 'R', 'Door'].map((name, at) => ({ channel: at + 1, name }));
    const marks = ['L', 'R', '1'];
    const monos = monoCard([{ ...file!, tracks }], (stem, channel) => `${stem}_${marks[channel - 1]}`);
    expect(fileNames(phone.day())).toEqual(monos.map(({ name }) => name));
    expect(told(phone.day(), openOn(phone.day(), await recordCard(monos)))).toEqual([]);
  });

  test('named otherwise is told file by file, and one tap gives the report its names', async () => {
    const { phone, day, files } = filmed();
    const monos = monoCard(files.map((file, at) => ({ ...file, name: `SR-00${at}.wav` })));
    const recordings = await recordCard(monos);
    const [open, ...others] = openOn(day(), recordings);
    expect(others).toEqual([]);
    expect(open).toMatchObject({ code: 'file-names-differ', detail: { count: monos.length } });
    expect(differenceWords(day(), open!)).toBe(`${monos.length} files named differently`);
    expect([open!.was, open!.is]).toEqual(['24T1_1, _2, _3, _4.wav', 'SR-000_1, _2, _3, _4.wav']);
    settle(phone, byFile(open!));
    expect(openOn(day(), recordings)).toEqual([]);
    expect(fileNames(day())).toEqual(monos.map(({ name }) => name));
  });

  test('of one take named otherwise is told with the names of its files', async () => {
    const { phone, day, files } = filmed(3);
    const monos = monoCard(files.with(1, { ...files[1]!, name: 'X.wav' }));
    const recordings = await recordCard(monos);
    const [open, ...others] = openOn(day(), recordings);
    expect(others).toEqual([]);
    expect(open).toMatchObject({ code: 'file-name-differs', is: 'X_1, _2, _3, _4.wav' });
    expect(sideWords(open!)?.log).toBe('24T2_1, _2, _3, _4.wav');
    settle(phone, byFile(open!));
    expect(fileNames(day())).toEqual(monos.map(({ name }) => name));
  });

  test.each([
    ['_tr', 1, '{slate}T{take}_tr{track}'],
    ['-CH', 2, '{slate}T{take}-CH{track:2}'],
    ['.', 1, '{slate}T{take}.{track}'],
  ])(
    'marked otherwise (%s) is one difference, and one tap puts the marks into the pattern',
    async (lead, width, filePattern) => {
      const { phone, day, files } = filmed();
      const mark = (channel: number) => `${lead}${String(channel).padStart(width, '0')}`;
      const monos = monoCard(files, (stem, channel) => stem + mark(channel));
      const recordings = await recordCard(monos);
      const [open, ...others] = openOn(day(), recordings);
      expect(others).toEqual([]);
      expect(open).toMatchObject({ code: 'file-names-differ', detail: { count: monos.length } });
      expect(choiceOf(byFile(open!))).toEqual({ kind: 'describe-day', fields: { filePattern } });
      settle(phone, byFile(open!));
      expect(openOn(day(), recordings)).toEqual([]);
      expect(fileNames(day())).toEqual(monos.map(({ name }) => name));
    },
  );

  test('named and marked otherwise, mixes L and R too, comes to its names by two taps', async () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, MIXES_BY_WORD, { kind: 'day-described', fields: { fileLayout: 'mono' } });
    phone.say({ kind: 'track-named', track: 'tr2', name: 'Door' }, take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const tracks = ['L', 'R', 'Door'].map((name, at) => ({ channel: at + 1, name }));
    const nameOf = (_: string, channel: number) => `X_tr${['L', 'R', '1'][channel - 1]}`;
    const monos = monoCard([{ ...file!, tracks }], nameOf);
    const recordings = await recordCard(monos);
    const codes: string[] = [];
    for (let [open] = openOn(phone.day(), recordings); open; [open] = openOn(phone.day(), recordings)) {
      codes.push(open.code);
      settle(phone, byFile(open));
    }
    expect(codes).toEqual(['file-name-differs', 'file-names-differ']);
    expect(fileNames(phone.day())).toEqual(monos.map(({ name }) => name));
  });

  test('marked in no common way is told, and the log may stand', async () => {
    const { day, files } = filmed(3);
    const odd = monoCard(files, (stem, channel) => `${stem}_${'XYZWV'[channel]}`);
    const open = openOn(day(), await recordCard(odd));
    expect(open.map(({ code, settlements }) => [code, settlements.map(({ kind }) => kind)])).toEqual([
      ['file-names-differ', ['keep-log']],
    ]);
  });

  test('with a file nobody logged names all of its files', async () => {
    const { day, files } = filmed(3);
    const last = files.at(-1)!;
    const start = last.start! + last.length + 20 * 48_000;
    const extra = { ...last, name: 'X.wav', scene: '99', take: '1', start, length: 480_000, note: '' };
    const open = openOn(day(), await recordCard(monoCard([...files, extra])));
    expect(told(day(), open)).toEqual(['recording-not-logged: null / "X_1, _2, _3, _4.wav"']);
  });
});

describe('the layout of the files', () => {
  test('that is mono while the log says poly is one difference, settled for the day', async () => {
    const { phone, day, files } = filmed(8, 'poly');
    const monos = monoCard(files);
    const recordings = await recordCard(monos);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['file-layout-differs: "poly" / "mono"']);
    expect(sideWords(open[0]!)?.log).toBe('one poly file a take');
    settle(phone, byFile(open[0]!));
    expect(openOn(day(), recordings)).toEqual([]);
    expect(fileNames(day())).toEqual(monos.map(({ name }) => name));
  });

  test('that is poly while the log says mono is one difference, settled for the day', async () => {
    const { phone, day, files } = filmed();
    const recordings = await recordCard(files);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['file-layout-differs: "mono" / "poly"']);
    settle(phone, byFile(open[0]!));
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('cannot be told of a file of one track', async () => {
    const { day, files } = filmed(3);
    const alone = files.map((file) => ({ ...file, tracks: file.tracks.slice(0, 1) }));
    const codes = openOn(day(), await recordCard(alone)).map(({ code }) => code);
    expect(codes).not.toContain('file-layout-differs');
  });
});

describe('a log started from mono files', () => {
  test('names and counts every one of them', async () => {
    const monos = monoCard(filmed(12).files);
    const recordings = await recordCard(monos);
    const phone = speaker();
    const log = startLogFromCard(recordings);
    if (!log.ok) throw new Error('refused');
    phone.say(...log.value);
    phone.say(...notesFromCard(phone.day(), recordings));
    expect(matchRecordings(phone.day(), recordings).pairs).toHaveLength(recordings.length);
    expect(fileNames(phone.day())).toEqual(monos.map(({ name }) => name));
    expect(
      phone.facts.filter(
        ({ kind, ...fact }) => kind === 'take-logged' && JSON.stringify(fact).includes('"file"'),
      ),
    ).toEqual([]);
    expect(openOn(phone.day(), recordings)).toEqual([]);
  });

  test('gives every file a track of its own, also where the files do not say which channel they are', async () => {
    const recordings = (await recordCard(monoCard(filmed(2).files))).map((one) => ({
      ...one,
      tracks: one.tracks.map((track) => ({ ...track, channel: undefined })),
    }));
    const phone = speaker();
    const log = startLogFromCard(recordings);
    if (!log.ok) throw new Error('refused');
    phone.say(...log.value);
    expect(reportOf(phone.day()).takes[0]!.tracks.map(({ number, name }) => [number, name])).toEqual(
      recordings[0]!.tracks.map(({ name }, at) => [`${at + 1}`, name]),
    );
  });
});
