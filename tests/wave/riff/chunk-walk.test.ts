import { describe, expect, test } from 'vitest';
import { bext, buildWave, chunk, data, ds64, fmt, hugeData, ixml, join } from '../build-wave.ts';
import { codesOf, described, describedChunks } from '../described.ts';

/**
 * Ids of chunks met in wave files: RIFF/WAVE specification 1991 and 1994, EBU Tech 3285 with its supplements and 3306,
 * ITU-R BS.2076 and BS.2088, AES46, iXML 3.01; those of editors from memory.
 */
const IDS = [
  ...['fmt ', 'data', 'bext', 'iXML', 'ds64', 'fact', 'LIST', 'JUNK', 'junk', 'PAD ', 'FLLR', 'cue ', 'axml'],
  ...['chna', 'levl', 'link', 'mext', 'qlty', 'cart', 'smpl', 'inst', 'plst', 'note', 'ltxt', 'labl', 'umid'],
  ...['UMID', 'minf', 'elm1', 'regn', 'id3 ', 'ID3 ', '_PMX', 'aXML', 'Fake', 'wavl', 'slnt'],
];

describe('a writer that forgot a pad byte', () => {
  test.each(IDS)('does not hide a %s chunk behind it', async (id) => {
    const file = await describedChunks([
      fmt(),
      data(),
      chunk('zzz9', 'odd', { unpadded: true }),
      chunk(id, new Uint8Array(2)),
      bext({ description: 'found' }),
    ]);
    expect(file.warnings).toContainEqual({ code: 'pad-byte-missing', at: 12 + 24 + 488 + 11, after: 'zzz9' });
    expect(codesOf(file)).not.toContain('chunk-id-unreadable');
    if (id !== 'bext') expect(file.bext?.description).toBe('found');
  });

  test('behind the audio does not make the audio look open', async () => {
    const audio = chunk('data', new Uint8Array(481), { unpadded: true });
    const file = await describedChunks([fmt({ bits: 8 }), audio, ixml('<SCENE>5</SCENE>')]);
    expect(file).toMatchObject({ data: { bytes: 481 }, ixml: { scene: '5' } });
    expect(codesOf(file)).toEqual(['pad-byte-missing']);
  });
});

describe('sizes', () => {
  test('of two chunks of one id come from the table in the order of the file', async () => {
    const level = (size: number) => chunk('levl', '', { size: 0xffff_ffff, hole: size });
    const table: [string, number][] = [
      ['levl', 300],
      ['levl', 500],
    ];
    const source = buildWave([ds64(0, 480, 160, table), level(300), level(500), fmt(), data()], {
      container: 'RF64',
    });
    const file = await described(source);
    expect(file.format?.at).toBe(source.chunkAt(3));
    expect(codesOf(file)).toEqual(['riff-size-differs']);
  });

  test('come from the first of two ds64 chunks', async () => {
    const audio = chunk('data', new Uint8Array(480), { size: 0xffff_ffff });
    const chunks = [ds64(0, 480, 160), ds64(0, 240, 80), fmt(), audio, ixml('<TAKE>2</TAKE>')];
    const file = await described(buildWave(chunks, { container: 'RF64' }));
    expect(file).toMatchObject({ data: { bytes: 480 }, ixml: { take: '2' } });
  });

  test.each([1, 2])('that wrapped %i times are measured to the end of the file as well', async (times) => {
    const bytes = times * 2 ** 32 + 900;
    const file = await describedChunks([fmt(), hugeData(bytes, 900)]);
    expect(file.data).toMatchObject({ bytes, declaredBytes: 900 });
    expect(file.warnings[0]).toEqual({ code: 'data-size-wrapped', at: 40, declared: 900, held: bytes });
  });

  test('that lead nowhere, with nothing to be found further on, count as they stand', async () => {
    const file = await describedChunks([fmt(), chunk('data', new Uint8Array(4800).fill(7), { size: 480 })]);
    expect(file.data?.bytes).toBe(480);
    expect(codesOf(file)).toEqual(['chunk-id-unreadable']);
  });

  test('of a chunk that reaches exactly to the end are whole', async () => {
    const file = await describedChunks([fmt(), data(480), chunk('LIST', 'four')]);
    expect(file.warnings).toEqual([]);
  });

  test('of the whole may count the pad byte at its end or not', async () => {
    const chunks = [fmt(), data(480)];
    const right = buildWave(chunks).size - 8;
    for (const off of [-1, 0, 1]) {
      expect((await described(buildWave(chunks, { riffSize: right + off }))).warnings).toEqual([]);
    }
    for (const off of [-2, 2]) {
      expect((await described(buildWave(chunks, { riffSize: right + off }))).warnings).toEqual([
        { code: 'riff-size-differs', at: 4, declared: right + 8 + off, held: right + 8 },
      ]);
    }
  });

  test('of a chain of chunks: 256 are read, and the place of the next one is told', async () => {
    const chain = (length: number) => Array.from({ length }, () => chunk('JUNK', ''));
    expect(codesOf(await describedChunks([fmt(), data(), ...chain(254)]))).toEqual([]);
    const file = await describedChunks([fmt(), data(), ...chain(255)]);
    expect(file.warnings).toEqual([{ code: 'chunks-too-many', at: 12 + 24 + 488 + 254 * 8, most: 256 }]);
  });
});

describe('iXML where the way to it is lost', () => {
  const bad = chunk('\0\0\0\0', new Uint8Array(64));
  const lost = (tail: readonly ReturnType<typeof chunk>[]) => describedChunks([fmt(), data(), bad, ...tail]);

  test('is found when it starts 32 KiB before the end, and not one byte earlier', async () => {
    const document = ixml('<SCENE>5</SCENE>');
    const rest = 32 * 1024 - 8 - document.payload.byteLength;
    const behind = (length: number) => chunk('zzzz', new Uint8Array(length - 8));
    const odd = document.payload.byteLength % 2;
    const file = await lost([document, behind(rest - odd)]);
    expect(file.ixml?.scene).toBe('5');
    expect(codesOf(file)).toEqual(['chunk-id-unreadable', 'ixml-astray']);
    expect((await lost([document, behind(rest - odd + 2)])).ixml).toBeUndefined();
  });

  test('is not looked for when one was read before', async () => {
    const file = await describedChunks([
      fmt(),
      data(),
      ixml('<SCENE>1</SCENE>'),
      bad,
      ixml('<SCENE>2</SCENE>'),
    ]);
    expect(file.ixml?.scene).toBe('1');
    expect(codesOf(file)).toEqual(['chunk-id-unreadable']);
  });

  test('is passed over where its size is none, or more than is left', async () => {
    const empty = chunk('iXML', '');
    const long = chunk('iXML', '<BWFXML><SCENE>3</SCENE></BWFXML>', { size: 9000 });
    expect((await lost([empty, long, ixml('<SCENE>7</SCENE>')])).ixml?.scene).toBe('7');
    expect((await lost([empty, long])).ixml).toBeUndefined();
    const odd = join(new TextEncoder().encode('<BWFXML><SCENE>9</SCENE></BWFXML>'));
    expect((await lost([chunk('iXML', odd, { unpadded: true })])).ixml?.scene).toBe('9');
  });
});
