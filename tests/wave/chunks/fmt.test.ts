import { describe, expect, test } from 'vitest';
import { bytesOf, chunk, data, fmt, fromHex, join, u16, u32 } from '../build-wave.ts';
import { codesOf, describedChunks } from '../described.ts';

const formatOf = async (payload: Uint8Array) => describedChunks([chunk('fmt ', payload), data(0)]);

const extensible = (bits: number, valid: number, tag: number, channels = 2, mask = 3): Uint8Array => {
  const align = (channels * bits) / 8;
  return join(
    u16(0xfffe, channels),
    u32(48_000, 48_000 * align),
    u16(align, bits, 22, valid),
    u32(mask),
    u16(tag),
    fromHex('00 00 00 00 10 00 80 00 00 AA 00 38 9B 71'),
  );
};

describe('fmt', () => {
  test('reads the published layout of 8 channels, 48 kHz, 24 bits, extensible', async () => {
    // WAVEFORMATEXTENSIBLE, 40 bytes, computed from the field table of the platform SDK.
    const hex =
      'FE FF 08 00 80 BB 00 00 00 94 11 00 18 00 18 00 16 00 18 00 00 00 00 00 01 00 00 00 00 00 10 00 80 00 00 AA 00 38 9B 71';
    const file = await formatOf(fromHex(hex));
    expect(file.warnings).toEqual([]);
    expect(file.format).toEqual({
      at: 12,
      tag: 1,
      float: false,
      channels: 8,
      sampleRate: 48_000,
      bytesPerSecond: 1_152_000,
      blockAlign: 24,
      containerBits: 24,
      validBits: 24,
    });
  });

  test.each([
    ['plain PCM, 16 bytes', fmt({ bits: 16 }).payload],
    ['PCM with an empty extension, 18 bytes', join(fmt({ bits: 16 }).payload, u16(0))],
  ])('reads %s', async (_, payload) => {
    const file = await formatOf(payload);
    expect(file.format).toMatchObject({ tag: 1, validBits: 16 });
    expect(file.warnings).toEqual([]);
  });

  test('tells float from whole numbers, plain and extensible', async () => {
    expect((await formatOf(fmt({ tag: 3, bits: 32 }).payload)).format).toMatchObject({
      float: true,
      validBits: 32,
    });
    expect((await formatOf(extensible(32, 32, 3))).format).toMatchObject({
      tag: 3,
      float: true,
    });
  });

  test('keeps 20 valid bits apart from their container of 24', async () => {
    expect((await formatOf(extensible(24, 20, 1))).format).toMatchObject({
      containerBits: 24,
      validBits: 20,
    });
    const plain = join(u16(1, 1), u32(48_000, 144_000), u16(3, 20));
    expect((await formatOf(plain)).format).toMatchObject({ containerBits: 24, validBits: 20, blockAlign: 3 });
  });

  test('takes 0 valid bits for all of them', async () => {
    expect((await formatOf(extensible(24, 0, 1))).format?.validBits).toBe(24);
  });

  test('never believes more valid bits than the container has', async () => {
    expect((await formatOf(extensible(16, 24, 1))).format?.validBits).toBe(16);
  });

  // Bytes a sample and bits of it: what a recorder may mean by them, common practice, no source.
  test.each([
    [8, 1, 8, 8],
    [16, 2, 16, 16],
    [17, 4, 32, 17],
    [20, 4, 32, 20],
    [32, 4, 32, 32],
    [64, 8, 64, 64],
    [0, 1, 8, 8],
  ])('takes %i bits in %i bytes for a container of %i', async (bits, bytes, containerBits, validBits) => {
    const file = await formatOf(join(u16(1, 2), u32(48_000, 96_000 * bytes), u16(2 * bytes, bits)));
    expect(file.format).toMatchObject({ containerBits, validBits, blockAlign: 2 * bytes });
    expect(file.warnings).toEqual([]);
  });

  test.each([
    [16, 4, 2],
    [24, 2, 3],
    [24, 9, 3],
    [0, 3, 1],
    [0, 0, 1],
    [80, 0, 8],
  ])('does not believe %i bits in %i bytes, and makes it %i', async (bits, bytes, meant) => {
    const file = await formatOf(join(u16(3, 2), u32(48_000, 96_000 * bytes), u16(2 * bytes, bits)));
    expect(file.format).toMatchObject({
      containerBits: 8 * meant,
      blockAlign: 2 * meant,
      bytesPerSecond: 96_000 * meant,
    });
    expect(codesOf(file)).toEqual(['fmt-inconsistent']);
  });

  test('leaves the figures of a coding that is not linear as they are', async () => {
    const coded = join(u16(0x11, 1), u32(48_000, 24_096), u16(1024, 4));
    const file = await formatOf(coded);
    expect(file.format).toMatchObject({ tag: 0x11, float: false, blockAlign: 1024, bytesPerSecond: 24_096 });
    expect(file.format).toMatchObject({ containerBits: 4, validBits: 4 });
    expect(file.warnings).toEqual([]);
    const without = join(u16(0x11, 2), u32(48_000, 24_096), u16(0, 4));
    expect((await formatOf(without)).format).toMatchObject({ blockAlign: 2, bytesPerSecond: 24_096 });
  });

  test('tells a wrong number of bytes a second by itself', async () => {
    const file = await formatOf(join(u16(1, 2), u32(48_000, 288_001), u16(6, 24)));
    expect(file.format?.bytesPerSecond).toBe(288_000);
    expect(file.warnings).toEqual([
      { code: 'fmt-inconsistent', at: 12, blockAlign: 6, bytesPerSecond: 288_001 },
    ]);
  });

  test('needs the whole of an extension', async () => {
    expect(codesOf(await formatOf(extensible(24, 24, 1)))).toEqual([]);
    const file = await formatOf(extensible(24, 24, 1).subarray(0, 39));
    expect(file.warnings).toEqual([{ code: 'fmt-short', at: 12, size: 39 }]);
    expect(file.format).toMatchObject({ tag: 1, validBits: 24 });
  });

  test('works a wrong block align out anew and says so', async () => {
    const wrong = join(u16(1, 8), u32(48_000, 1), u16(2, 24));
    const file = await describedChunks([chunk('fmt ', wrong), data(2400)]);
    expect(file.format).toMatchObject({ blockAlign: 24, bytesPerSecond: 1_152_000 });
    expect(file.resolved.length).toBe(100);
    expect(file.warnings).toEqual([{ code: 'fmt-inconsistent', at: 12, blockAlign: 2, bytesPerSecond: 1 }]);
  });

  test('reports a sub-format whose tail is not the common one', async () => {
    const odd = join(extensible(24, 24, 1).subarray(0, 26), bytesOf('fourteen bytes'));
    expect((await formatOf(odd)).warnings).toEqual([
      { code: 'fmt-inconsistent', at: 12, subFormat: '666f75727465656e206279746573' },
    ]);
  });

  test('reads an extensible header without its extension as PCM and says so', async () => {
    const file = await formatOf(extensible(24, 24, 1).subarray(0, 18));
    expect(file.format).toMatchObject({ tag: 1, validBits: 24 });
    expect(codesOf(file)).toEqual(['fmt-short']);
  });

  test.each([
    ['too short', new Uint8Array(15), 'fmt-short'],
    ['without channels', join(u16(1, 0), u32(48_000, 0), u16(0, 24)), 'fmt-damaged'],
    ['without a sample rate', join(u16(1, 1), u32(0, 0), u16(3, 24)), 'fmt-damaged'],
  ])('that is %s gives no format and a warning', async (_, payload, code) => {
    const file = await formatOf(payload);
    expect(file.format).toBeUndefined();
    expect(file.resolved).toMatchObject({ sampleRate: undefined, length: undefined });
    expect(codesOf(file)).toEqual([code]);
  });
});
