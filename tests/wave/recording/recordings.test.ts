import { describe, expect, test } from 'vitest';
import type { WaveDescription } from '../../../src/wave/file/describe-wave.ts';
import { joinRecordings } from '../../../src/wave/recording/recordings.ts';
import { bext, buildWave, fmt, hugeData, ixml } from '../build-wave.ts';
import { described } from '../described.ts';

interface Wanted {
  readonly name: string;
  readonly start?: number;
  /** Seconds. */
  readonly length?: number;
  readonly scene?: string;
  readonly take?: string;
  readonly tape?: string;
  readonly family?: string;
  readonly index?: string;
  readonly total?: number;
  readonly channels?: number;
  readonly tracks?: readonly [channel: number, name: string][];
  readonly more?: string;
}

const element = (name: string, value: string | number | undefined): string =>
  value === undefined ? '' : `<${name}>${value}</${name}>`;

function inside({
  scene = '21A',
  take = '3',
  tape = 'R04',
  family,
  index,
  total,
  tracks = [],
  more = '',
}: Wanted) {
  const set =
    element('FAMILY_UID', family) + element('FILE_SET_INDEX', index) + element('TOTAL_FILES', total);
  const list = tracks.map(
    ([channel, name], at) =>
      `<TRACK>${element('CHANNEL_INDEX', channel)}${element('INTERLEAVE_INDEX', at + 1)}${element('NAME', name)}</TRACK>`,
  );
  return (
    element('SCENE', scene) +
    element('TAKE', take) +
    element('TAPE', tape) +
    `<SPEED><TIMECODE_RATE>25/1</TIMECODE_RATE></SPEED><FILE_SET>${set}</FILE_SET>` +
    `<TRACK_LIST>${list.join('')}</TRACK_LIST>${more}`
  );
}

const START = 36_000 * 48_000;

const file = (wanted: Wanted): Promise<WaveDescription> => {
  const { name, start = START, length = 60, channels = 1 } = wanted;
  return described(
    buildWave(
      [
        bext({ timeReference: start }),
        fmt({ channels }),
        hugeData(length * 48_000 * 3 * channels),
        ixml(inside(wanted)),
      ],
      { name },
    ),
  );
};

const all = (...wanted: Wanted[]): Promise<WaveDescription[]> => Promise.all(wanted.map(file));

/** Names per recording, files and copies. */
const namesOf = (files: readonly WaveDescription[]): string[][] =>
  joinRecordings(files).map((one) => [...one.files, ...one.copies].map(({ name }) => name));

describe('mono files of one set', () => {
  test('become one recording by their FAMILY_UID, tracks in the order of channels', async () => {
    const files = await all(
      { name: 'b_2.wav', family: 'F1', index: '2', tracks: [[2, 'Keeper']], total: 2 },
      { name: 'b_1.wav', family: 'F1', index: '1', tracks: [[1, 'Boom']], total: 2 },
    );
    const [recording, ...others] = joinRecordings(files);
    expect(others).toEqual([]);
    expect(recording).toMatchObject({
      scene: '21A',
      take: '3',
      tape: 'R04',
      rate: '25',
      length: 60 * 48_000,
      start: { label: { timecode: '10:00:00:00' } },
      warnings: [],
    });
    expect(recording?.tracks).toEqual([
      { channel: 1, name: 'Boom', function: undefined, file: 'b_1.wav', interleave: 1 },
      { channel: 2, name: 'Keeper', function: undefined, file: 'b_2.wav', interleave: 1 },
    ]);
  });

  test('without a FAMILY_UID are joined by roll, scene, take and start', async () => {
    const files = await all(
      { name: 'x_1.wav', tracks: [[1, 'Boom']] },
      { name: 'x_2.wav', tracks: [[2, 'Keeper']] },
      { name: 'y_1.wav', tracks: [[1, 'Boom']], take: '4' },
      { name: 'z_1.wav', tracks: [[1, 'Boom']], start: START + 1 },
    );
    expect(namesOf(files)).toEqual([['x_1.wav', 'x_2.wav'], ['y_1.wav'], ['z_1.wav']]);
  });

  test('of a writer that never changes its FAMILY_UID stay apart by their take', async () => {
    const files = await all(
      { name: '1.wav', family: 'SAME', index: '1', take: '1' },
      { name: '2.wav', family: 'SAME', index: '1', take: '2', start: START + 1e7 },
    );
    expect(namesOf(files)).toEqual([['1.wav'], ['2.wav']]);
  });

  test('that are not all there say how many are missing', async () => {
    const files = await all({ name: 'a.wav', family: 'F', index: '1', total: 3 });
    expect(joinRecordings(files)[0]?.warnings).toEqual([{ code: 'set-incomplete', expected: 3, found: 1 }]);
  });

  test('that disagree say in what', async () => {
    const files = await all(
      { name: 'a.wav', family: 'F', index: '1', length: 60, more: '<NOTE>a</NOTE>' },
      { name: 'b.wav', family: 'F', index: '2', length: 61, more: '<NOTE>b</NOTE>' },
    );
    expect(joinRecordings(files)[0]).toMatchObject({
      length: 61 * 48_000,
      note: 'a',
      warnings: [
        { code: 'set-lengths-differ', lengths: [60 * 48_000, 61 * 48_000] },
        { code: 'set-values-differ', field: 'note', values: ['a', 'b'] },
      ],
    });
  });

  test('are circled when one of them is', async () => {
    const files = await all(
      { name: 'a.wav', family: 'F', index: '1' },
      {
        name: 'b.wav',
        family: 'F',
        index: '2',
        more: '<CIRCLED>TRUE</CIRCLED><TAKE_TYPE>PICKUP</TAKE_TYPE>',
      },
    );
    expect(joinRecordings(files)[0]).toMatchObject({ circled: true, takeTypes: ['PICKUP'] });
  });
});

describe('the same file twice', () => {
  test('is one recording with a copy', async () => {
    const twin = {
      name: 'a.wav',
      channels: 2,
      tracks: [
        [1, 'Boom'],
        [2, 'Keeper'],
      ] as [number, string][],
    };
    const [recording, ...others] = joinRecordings(await all(twin, { ...twin, name: 'backup/a.wav' }));
    expect(others).toEqual([]);
    expect(recording?.files).toHaveLength(1);
    expect(recording?.tracks).toHaveLength(2);
    expect(recording?.warnings).toEqual([{ code: 'file-twice', names: ['backup/a.wav'] }]);
  });

  test('under one name is kept twice where nothing proves it the same', async () => {
    const files = await all({ name: 'a.wav', channels: 2 }, { name: 'a.wav', channels: 2 });
    expect(namesOf(files)).toEqual([['a.wav'], ['a.wav']]);
  });
});

describe('a recording split by the recorder', () => {
  const part = (name: string, minute: number, more: Partial<Wanted> = {}): Wanted => ({
    name,
    start: START + minute * 60 * 48_000,
    channels: 8,
    ...more,
  });

  test('is one again where each part starts where the last one ended', async () => {
    const files = await all(part('c.wav', 2, { length: 20 }), part('a.wav', 0), part('b.wav', 1));
    const [recording, ...others] = joinRecordings(files);
    expect(others).toEqual([]);
    expect(recording?.parts.map(({ files: [first] }) => first?.name)).toEqual(['a.wav', 'b.wav', 'c.wav']);
    expect(recording).toMatchObject({ length: 140 * 48_000, warnings: [] });
    expect(recording?.tracks).toHaveLength(8);
  });

  test('allows one sample either way, not two', async () => {
    const nudged = (samples: number) =>
      all(part('a.wav', 0), { ...part('b.wav', 1), start: START + 60 * 48_000 + samples });
    expect(namesOf(await nudged(1))).toEqual([['a.wav', 'b.wav']]);
    expect(namesOf(await nudged(-1))).toEqual([['a.wav', 'b.wav']]);
    expect(namesOf(await nudged(2))).toEqual([['a.wav'], ['b.wav']]);
  });

  test('is not confused with the next take pressed at once', async () => {
    expect(namesOf(await all(part('a.wav', 0), part('b.wav', 1, { take: '4' })))).toEqual([
      ['a.wav'],
      ['b.wav'],
    ]);
  });

  test('holds across midnight, by the day of labels and of the clock', async () => {
    const late = 86_370 * 48_000;
    const files = await all(part('b.wav', 0, { start: 30 * 48_000 }), part('a.wav', 0, { start: late }));
    expect(namesOf(files)).toEqual([['a.wav', 'b.wav']]);
    const [recording] = joinRecordings(files);
    expect(recording?.length).toBe(120 * 48_000);
  });

  test('across midnight with one FAMILY_UID comes in order too', async () => {
    const family = { family: 'F', index: '1' };
    const files = await all(
      part('c.wav', 0, { start: 30 * 48_000, ...family }),
      part('b.wav', 0, { start: 86_370 * 48_000, ...family }),
      part('a.wav', 0, { start: 86_310 * 48_000, ...family }),
    );
    const [recording] = joinRecordings(files);
    expect(recording?.files.map(({ name }) => name)).toEqual(['a.wav', 'b.wav', 'c.wav']);
    expect(recording).toMatchObject({ start: { samples: 86_310 * 48_000 }, warnings: [] });
  });

  test('with one FAMILY_UID and a hole in it is still one, and the hole is told', async () => {
    const files = await all(
      part('a.wav', 0, { family: 'F', index: 'A' }),
      part('b.wav', 2, { family: 'F', index: 'B' }),
    );
    expect(joinRecordings(files)[0]?.warnings).toEqual([
      { code: 'parts-do-not-meet', after: 'a.wav', samples: 60 * 48_000 },
    ]);
  });

  test('of mono files joins set with set', async () => {
    const mono = (name: string, minute: number, channel: number): Wanted => ({
      ...part(name, minute, { channels: 1, family: `F${minute}`, index: String(channel) }),
      tracks: [[channel, `T${channel}`]],
    });
    const files = await all(mono('b2', 1, 2), mono('a1', 0, 1), mono('b1', 1, 1), mono('a2', 0, 2));
    expect(namesOf(files)).toEqual([['a1', 'a2', 'b1', 'b2']]);
    expect(joinRecordings(files)[0]).toMatchObject({ length: 120 * 48_000 });
  });

  test('that fills a whole day does not run in a circle', async () => {
    const third = 28_800;
    const files = await all(
      ...['a.wav', 'b.wav', 'c.wav'].map((name, index) =>
        part(name, 0, { start: index * third * 48_000, length: third, channels: 1 }),
      ),
    );
    expect(namesOf(files)).toEqual([['a.wav', 'b.wav', 'c.wav']]);
  });
});

describe('a whole card', () => {
  test('comes out the same whatever the order the files were read in, with no file lost', async () => {
    const files = await all(
      ...Array.from({ length: 24 }, (_, index) => ({
        name: `f${index}.wav`,
        take: String(1 + Math.floor(index / 4)),
        start: START + Math.floor(index / 4) * 1e7,
        tracks: [[1 + (index % 4), `T${index % 4}`]] as [number, string][],
      })),
    );
    const forwards = namesOf(files);
    expect(namesOf(files.toReversed())).toEqual(forwards);
    expect(forwards).toHaveLength(6);
    expect(forwards.flat().sort()).toEqual(files.map(({ name }) => name).sort());
  });

  test('with files that say nothing at all keeps each as a recording of its own', async () => {
    const bare = await Promise.all(
      ['a.wav', 'b.wav'].map((name) => described(buildWave([fmt(), hugeData(600)], { name }))),
    );
    const recordings = joinRecordings(bare);
    expect(recordings).toHaveLength(2);
    expect(recordings[0]).toMatchObject({
      start: undefined,
      circled: undefined,
      length: 200,
    });
  });

  test('of 500 files is joined in well under a second', async () => {
    const files = await all(
      ...Array.from({ length: 500 }, (_, index) => ({
        name: `f${index}.wav`,
        take: String(index),
        start: START + index * 1e6,
        channels: 8,
      })),
    );
    const started = performance.now();
    expect(joinRecordings(files)).toHaveLength(500);
    expect(performance.now() - started).toBeLessThan(1000);
  });

  test('with no files has no recordings', () => {
    expect(joinRecordings([])).toEqual([]);
  });
});
