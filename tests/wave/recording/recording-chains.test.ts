import { describe, expect, test } from 'vitest';
import type { WaveDescription } from '../../../src/wave/file/describe-wave.ts';
import { joinRecordings, type Recording } from '../../../src/wave/recording/recordings.ts';
import { type BextWanted, bext, buildWave, type FormatWanted, fmt, hugeData, ixml } from '../build-wave.ts';
import { described } from '../described.ts';

const SECOND = 48_000;
const MINUTE = 60 * SECOND;
const START = 36_000 * SECOND;

interface Wanted {
  readonly name: string;
  readonly start?: number;
  /** Samples. */
  readonly length?: number;
  readonly format?: FormatWanted;
  readonly description?: BextWanted['description'];
  readonly inside?: string;
}

const SLATE = '<SCENE>5</SCENE><TAKE>1</TAKE><TAPE>R1</TAPE>';
const track = (channel: number, name: string): string =>
  `<TRACK_LIST><TRACK><CHANNEL_INDEX>${channel}</CHANNEL_INDEX><NAME>${name}</NAME></TRACK></TRACK_LIST>`;
const set = (index: string | number, more = ''): string =>
  `<FILE_SET><FAMILY_UID>F1</FAMILY_UID><FILE_SET_INDEX>${index}</FILE_SET_INDEX>${more}</FILE_SET>`;
const speed = (rate: string): string => `<SPEED><TIMECODE_RATE>${rate}</TIMECODE_RATE></SPEED>`;

const file = ({ name, start = START, length = MINUTE, format = {}, inside = SLATE }: Wanted) =>
  described(
    buildWave(
      [
        bext({ timeReference: start }),
        fmt(format),
        hugeData(length * 3 * (format.channels ?? 1)),
        ixml(inside),
      ],
      { name },
    ),
  );

const joined = async (...wanted: Wanted[]): Promise<Recording[]> =>
  joinRecordings(await Promise.all(wanted.map(file)));
const names = (files: readonly WaveDescription[]): string[] => files.map(({ name }) => name);
const filesOf = (recordings: readonly Recording[]): string[][] => recordings.map(({ files }) => names(files));

describe('a part that starts where another ended', () => {
  const poly: Wanted = { name: 'a', inside: SLATE + track(1, 'Boom') };
  const next: Wanted = { ...poly, name: 'b', start: START + MINUTE };

  test('continues it', async () => {
    expect(filesOf(await joined(poly, next))).toEqual([['a', 'b']]);
  });

  test.each<[string, Partial<Wanted>]>([
    ['scene', { inside: SLATE.replace('>5<', '>6<') + track(1, 'Boom') }],
    ['take', { inside: SLATE.replace('>1<', '>2<') + track(1, 'Boom') }],
    ['roll', { inside: SLATE.replace('R1', 'R2') + track(1, 'Boom') }],
    ['track name', { inside: SLATE + track(1, 'Lav') }],
    ['channel', { inside: SLATE + track(2, 'Boom') }],
    ['number of channels', { format: { channels: 2 } }],
    ['sample rate', { format: { sampleRate: 96_000 } }],
  ])('does not with another %s', async (_, other) => {
    expect(await joined(poly, { ...next, ...other })).toHaveLength(2);
  });

  test('does not follow a recording of no length, or two of them', async () => {
    expect(await joined({ ...poly, length: 0 }, { ...poly, name: 'b' })).toHaveLength(2);
    const twins = await joined(poly, next, { ...next, name: 'c', start: START + MINUTE + 1 });
    expect(filesOf(twins)).toEqual([['a', 'b'], ['c']]);
  });

  test('brings the copies along', async () => {
    const [recording] = await joined(poly, { ...poly, name: 'a copy' }, next, { ...next, name: 'b copy' });
    expect(names(recording!.files)).toEqual(['a', 'b']);
    expect(names(recording!.copies)).toEqual(['a copy', 'b copy']);
    expect(recording!.warnings).toEqual([{ code: 'file-twice', names: ['a copy', 'b copy'] }]);
  });
});

describe('across midnight', () => {
  // A day of labels at 24000/1001 lasts 86,486.4 s (SMPTE ST 12-1), a day of the clock 86,400 s.
  const rated = SLATE + speed('24000/1001');
  const late = (day: number): Wanted => ({
    name: 'a',
    start: Math.round(day * SECOND) - MINUTE / 2,
    inside: rated,
  });
  const early = (off = 0): Wanted => ({ name: 'b', start: MINUTE / 2 + off, inside: rated });

  test.each([
    ['labels', 86_486.4],
    ['the clock', 86_400],
  ])('a part may wrap by the day of %s', async (_, day) => {
    expect(filesOf(await joined(late(day), early()))).toEqual([['a', 'b']]);
    expect(filesOf(await joined(late(day), early(1)))).toEqual([['a', 'b']]);
    expect(await joined(late(day), early(2))).toHaveLength(2);
  });

  test('a file without a rate wraps by the clock alone', async () => {
    const plain = (one: Wanted): Wanted => ({ ...one, inside: SLATE });
    expect(await joined(plain(late(86_400)), plain(early()))).toHaveLength(1);
    expect(await joined(plain(late(86_486.4)), plain(early()))).toHaveLength(2);
  });

  test('of one set come in the order they were recorded, and a set that does not meet stays as it starts', async () => {
    const part = (name: string, start: number): Wanted => ({
      name,
      start,
      length: 30 * SECOND,
      inside: SLATE + speed('25/1') + set(name),
    });
    const night = await joined(part('c', 0), part('a', 86_340 * SECOND), part('b', 86_370 * SECOND));
    expect(filesOf(night)).toEqual([['a', 'b', 'c']]);
    expect(night[0]!.warnings).toEqual([]);
    const day = await joined(part('b', 60 * SECOND), part('a', 0));
    expect(filesOf(day)).toEqual([['a', 'b']]);
    const whole = await joined({ ...part('a', 0), length: 86_400 * SECOND });
    expect(filesOf(whole)).toEqual([['a']]);
  });
});

describe('files of one set', () => {
  const mono = (name: string, more: Partial<Wanted> = {}): Wanted => ({ name, ...more });

  test('come by their channels, by the index of the set where no channel is named, and by their names', async () => {
    const byChannel = await joined(
      mono('x', { inside: SLATE + track(10, 'L') + set('B') }),
      mono('y', { inside: SLATE + track(9, 'K') + set('A') }),
    );
    expect(filesOf(byChannel)).toEqual([['y', 'x']]);
    const byIndex = await joined(
      mono('x', { inside: SLATE + set(10) }),
      mono('y', { inside: SLATE + set(9) }),
    );
    expect(filesOf(byIndex)).toEqual([['y', 'x']]);
    const byName = await joined(
      mono('y', { inside: SLATE + set('A') }),
      mono('x', { inside: SLATE + set('B') }),
    );
    expect(filesOf(byName)).toEqual([['x', 'y']]);
  });

  test('that fill a place of their own are no copies, whatever marks the place', async () => {
    for (const [one, other] of [
      [set(1), set(2)],
      [track(1, 'Boom'), track(2, 'Boom')],
      [
        '<TRACK_LIST><TRACK><NAME>Boom</NAME></TRACK></TRACK_LIST>',
        '<TRACK_LIST><TRACK><NAME>Lav</NAME></TRACK></TRACK_LIST>',
      ],
      ['', ''],
    ]) {
      const [recording, ...others] = await joined(
        mono('x', { inside: SLATE + one }),
        mono('y', { inside: SLATE + other }),
      );
      expect(others).toEqual([]);
      expect([names(recording!.files), names(recording!.copies)]).toEqual([['x', 'y'], []]);
    }
  });

  test('that fill one place are copies', async () => {
    for (const inside of [set(1), track(1, 'Boom')]) {
      const [recording] = await joined(
        mono('x', { inside: SLATE + inside }),
        mono('y', { inside: SLATE + inside }),
      );
      expect([names(recording!.files), names(recording!.copies)]).toEqual([['x'], ['y']]);
    }
  });

  test('are not joined by a family of noughts, nor without a take or a start', async () => {
    const noughts = set(1).replace('F1', '0000') + track(1, 'A');
    const other = set(2).replace('F1', '0000') + track(2, 'B');
    expect(
      await joined(
        mono('x', { inside: SLATE + noughts }),
        mono('y', { inside: SLATE + other, start: START + 2 * MINUTE }),
      ),
    ).toHaveLength(2);
    const takeless = '<SCENE>5</SCENE>';
    expect(
      await joined(
        mono('x', { inside: takeless + track(1, 'A') }),
        mono('y', { inside: takeless + track(2, 'B') }),
      ),
    ).toHaveLength(2);
  });

  test('of several channels each are joined without a family only where they name their tracks', async () => {
    const stereo = { format: { channels: 2 } };
    expect(await joined(mono('x', stereo), mono('y', stereo))).toHaveLength(2);
    const list = (name: string) => SLATE + track(1, name);
    expect(
      await joined(mono('x', { ...stereo, inside: list('A') }), mono('y', { ...stereo, inside: list('B') })),
    ).toHaveLength(1);
  });

  test('are not joined without a family where their lengths differ', async () => {
    const x = mono('x', { inside: SLATE + track(1, 'A') });
    expect(await joined(x, mono('y', { inside: SLATE + track(2, 'B'), length: MINUTE + 1 }))).toHaveLength(2);
  });

  test('that say otherwise are told by what differs, and the first counts', async () => {
    const one = `<PROJECT>P</PROJECT>${SLATE}${speed('24/1')}${set(1)}`;
    const other = `<PROJECT>Q</PROJECT>${SLATE}${speed('25/1')}${set(2)}`;
    const [recording] = await joined(
      mono('x', { inside: one }),
      mono('y', { inside: other, format: { bits: 16 }, length: (MINUTE * 2) / 3 }),
    );
    expect(recording).toMatchObject({ rate: '24', bits: 24, project: 'P', circled: false });
    expect(recording!.warnings).toEqual(
      expect.arrayContaining([
        { code: 'set-values-differ', field: 'bits', values: ['24', '16'] },
        { code: 'set-values-differ', field: 'rate', values: ['24', '25'] },
        { code: 'set-values-differ', field: 'project', values: ['P', 'Q'] },
      ]),
    );
  });

  test('are as many as they should be, or the lack is told', async () => {
    const of = (total: number) => SLATE + set(1, `<TOTAL_FILES>${total}</TOTAL_FILES>`);
    expect((await joined(mono('x', { inside: of(1) })))[0]!.warnings).toEqual([]);
    expect((await joined(mono('x', { inside: of(2) })))[0]!.warnings).toEqual([
      { code: 'set-incomplete', expected: 2, found: 1 },
    ]);
  });

  test('that overlap or leave a hole of more than a sample are told by how much', async () => {
    const gap = async (samples: number) =>
      (
        await joined(
          mono('a', { inside: SLATE + set('A') }),
          mono('b', { inside: SLATE + set('B'), start: START + MINUTE + samples }),
        )
      )[0]!.warnings;
    for (const samples of [-1, 0, 1]) expect(await gap(samples)).toEqual([]);
    for (const samples of [-2, 2])
      expect(await gap(samples)).toEqual([{ code: 'parts-do-not-meet', after: 'a', samples }]);
  });
});

test('recordings come by roll, then by start, then by name, those without a start first', async () => {
  const of = (name: string, roll: string, take: number, start?: number): Wanted => ({
    name,
    inside: SLATE.replace('R1', roll).replace('>1<', `>${take}<`),
    ...(start === undefined ? {} : { start }),
  });
  const bare = (name: string) =>
    described(buildWave([fmt(), hugeData(600), ixml('<TAPE>R1</TAPE>')], { name }));
  const files = await Promise.all([
    file(of('d', 'R2', 1, 0)),
    file(of('c', 'R1', 3, START + 2 * MINUTE)),
    file(of('b', 'R1', 2)),
    file(of('a', 'R1', 4)),
    bare('y'),
    bare('x'),
  ]);
  const inOrder = [['x'], ['y'], ['a'], ['b'], ['c'], ['d']];
  expect(filesOf(joinRecordings(files))).toEqual(inOrder);
  expect(filesOf(joinRecordings(files.toReversed()))).toEqual(inOrder);
});

test('the tracks of a split recording are those of its first part, and its end follows all of them', async () => {
  const inside = SLATE + speed('25/1') + track(7, 'Boom');
  const [recording] = await joined(
    { name: 'a', inside },
    { name: 'b', inside, start: START + MINUTE, length: 10 * SECOND },
  );
  expect(recording!.tracks).toEqual([
    { channel: 7, name: 'Boom', function: undefined, file: 'a', interleave: 1 },
  ]);
  expect(recording).toMatchObject({ length: 70 * SECOND });
});

test('tracks of no channel have their place in a set by name', async () => {
  const named = (name: string): string => `<TRACK_LIST><TRACK><NAME>${name}</NAME></TRACK></TRACK_LIST>`;
  const family = '<FILE_SET><FAMILY_UID>F1</FAMILY_UID></FILE_SET>';
  const of = (name: string, track: string): Wanted => ({ name, inside: SLATE + family + named(track) });
  const [recording] = await joined(of('a', 'Boom'), of('b', 'Lav'), of('c', 'Lav'));
  expect(names(recording!.files)).toEqual(['a', 'b']);
  expect(recording!.warnings).toContainEqual({ code: 'file-twice', names: ['c'] });
});
