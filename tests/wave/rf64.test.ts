import { describe, expect, test } from 'vitest';
import { readDs64 } from '../../src/wave/riff/ds64.ts';
import {
  bext,
  buildWave,
  chunk,
  data,
  ds64,
  fmt,
  fromHex,
  hugeData,
  ixml,
  join,
  u32,
  u64,
} from './build-wave.ts';
import { codesOf, described, describedChunks } from './described.ts';

// 8 tracks, 48 kHz, 24 bits, 90 minutes; computed from EBU Tech 3306.
const FIRST_48 =
  '52 46 36 34 FF FF FF FF 57 41 56 45 64 73 36 34 1C 00 00 00 C2 E2 C9 72 01 00 00 00 00 E0 C9 72 01 00 00 00 ' +
  '00 14 73 0F 00 00 00 00 00 00 00 00';
const DATA = 6_220_800_000;
const FRAMES = 259_200_000;

const large = (container: 'RF64' | 'BW64', sampleCount = FRAMES) => {
  const tail = ixml('<SCENE>30</SCENE>');
  const head = [bext(), fmt({ channels: 8 }), hugeData(DATA, 0xffff_ffff), tail];
  const riffSize = buildWave([ds64(0, 0, 0), ...head]).size - 8;
  return buildWave([ds64(riffSize, DATA, sampleCount), ...head], { container });
};

describe('RF64 and BW64', () => {
  test('lay their first 48 bytes out as the published fields say, low word first', () => {
    const source = buildWave([ds64(6_220_800_706, DATA, FRAMES)], { container: 'RF64' });
    expect(source.toBytes()).toEqual(fromHex(FIRST_48));
  });

  test('ds64 gives all three sizes beyond 32 bits', () => {
    expect(readDs64(fromHex(FIRST_48).subarray(20))).toEqual({
      riffSize: 6_220_800_706,
      dataSize: DATA,
      sampleCount: FRAMES,
      others: new Map(),
    });
  });

  test.each(['RF64', 'BW64'] as const)('%s finds what lies behind 6 GB of audio', async (container) => {
    const file = await described(large(container));
    expect(file).toMatchObject({ container, warnings: [] });
    expect(file.resolved).toMatchObject({ length: FRAMES, scene: '30', channels: 8 });
  });

  test('only RF64 counts sample frames in ds64; in BW64 the field is a dummy (ITU-R BS.2088)', async () => {
    expect(codesOf(await described(large('RF64', 5)))).toEqual(['sample-count-differs']);
    expect(codesOf(await described(large('BW64', 5)))).toEqual([]);
  });

  test('a size other than 0xFFFFFFFF counts as it stands (EBU Tech 3306, section 3)', async () => {
    const source = buildWave([ds64(0, 999_999, 0), fmt(), data(480), ixml('<TAKE>1</TAKE>')], {
      container: 'RF64',
    });
    const file = await described(source);
    expect(file.resolved).toMatchObject({ length: 160, take: '1' });
  });

  test('chunks other than data take their size from the table: 12 bytes an entry, a number of entries', async () => {
    const levels = chunk('levl', '', { size: 0xffff_ffff, hole: 5e9 });
    const table: [string, number][] = [
      ['cue ', 12],
      ['levl', 5e9],
    ];
    const source = buildWave([ds64(0, 480, 160, table), fmt(), data(), levels, ixml('<TAKE>7</TAKE>')], {
      container: 'RF64',
    });
    expect((await described(source)).ixml?.take).toBe('7');
  });

  test('a table that claims more entries than it holds is read as far as it goes', () => {
    const payload = join(u64(100), u64(50), u64(10), u32(4_000_000_000));
    expect(readDs64(payload)?.others.size).toBe(0);
  });

  test('a ds64 longer than its table, once a JUNK chunk, is accepted', async () => {
    const { payload } = ds64(0, DATA, FRAMES);
    const grown = chunk('ds64', join(payload, new Uint8Array(64)));
    const source = buildWave([grown, fmt({ channels: 8 }), hugeData(DATA, 0xffff_ffff)], {
      container: 'RF64',
    });
    expect((await described(source)).resolved.length).toBe(FRAMES);
  });

  test('the same machine may leave the JUNK it reserved when the file stays small (EBU Tech 3306, section 3.5)', async () => {
    const file = await describedChunks([chunk('JUNK', new Uint8Array(28)), fmt(), data()]);
    expect(file.container).toBe('RIFF');
    expect(file.warnings).toEqual([]);
  });

  test('without ds64 the audio reaches to the end and the lack is reported', async () => {
    const source = buildWave([fmt(), hugeData(3_000_000, 0xffff_ffff)], { container: 'RF64' });
    const file = await described(source);
    expect(file.resolved.length).toBe(1_000_000);
    expect(codesOf(file)).toEqual(['data-not-closed', 'ds64-missing', 'riff-size-differs']);
  });

  test('a ds64 below 28 bytes is reported and not used', async () => {
    const source = buildWave([chunk('ds64', new Uint8Array(24)), fmt(), hugeData(3_000, 0xffff_ffff)], {
      container: 'RF64',
    });
    expect(codesOf(await described(source))).toEqual(['ds64-short', 'data-not-closed', 'riff-size-differs']);
  });

  test('a ds64 never filled in, recording not closed, leaves the audio to the end of the file', async () => {
    const source = buildWave([ds64(0, 0, 0), fmt(), hugeData(3_000_000, 0xffff_ffff)], { container: 'RF64' });
    const file = await described(source);
    expect(file.resolved.length).toBe(1_000_000);
    expect(codesOf(file)).toContain('data-not-closed');
  });

  test('64-bit sizes that no file has are cut at the end', async () => {
    const source = buildWave(
      [chunk('ds64', new Uint8Array(28).fill(0xff)), fmt(), hugeData(3_000, 0xffff_ffff)],
      {
        container: 'RF64',
      },
    );
    const file = await described(source);
    expect(file.resolved.length).toBe(1_000);
    expect(codesOf(file)).toContain('chunk-past-end');
  });
});

describe('the 4 GiB limit', () => {
  // Minutes to 4 GiB = 2^32 / (tracks x rate x container bytes x 60), computed.
  test.each([
    [2, 48_000, 24, 288_000, 248.55],
    [8, 48_000, 24, 1_152_000, 62.14],
    [10, 48_000, 24, 1_440_000, 49.71],
    [16, 48_000, 24, 2_304_000, 31.07],
    [16, 48_000, 32, 3_072_000, 23.3],
    [8, 96_000, 24, 2_304_000, 31.07],
  ])(
    '%i tracks at %i Hz and %i bits take %i bytes a second, %d minutes',
    async (channels, sampleRate, bits, perSecond, minutes) => {
      const { format } = await describedChunks([fmt({ channels, sampleRate, bits }), data(0)]);
      expect(format?.bytesPerSecond).toBe(perSecond);
      expect(2 ** 32 / perSecond / 60).toBeCloseTo(minutes, 2);
    },
  );
});
