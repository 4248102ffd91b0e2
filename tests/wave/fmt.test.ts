import { describe, expect, test } from 'vitest';
import { bytesOf, chunk, data, fmt, fromHex, join, u16, u32 } from './build-wave.ts';
import { codesOf, describedChunks } from './described.ts';

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
      extensible: true,
      float: false,
      channels: 8,
      sampleRate: 48_000,
      bytesPerSecond: 1_152_000,
      blockAlign: 24,
      containerBits: 24,
      validBits: 24,
      channelMask: 0,
    });
  });

  test.each([
    ['plain PCM, 16 bytes', fmt({ bits: 16 }).payload],
    ['PCM with an empty extension, 18 bytes', join(fmt({ bits: 16 }).payload, u16(0))],
  ])('reads %s', async (_, payload) => {
    const file = await formatOf(payload);
    expect(file.format).toMatchObject({ tag: 1, extensible: false, validBits: 16, channelMask: undefined });
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
      channelMask: 3,
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

  test('works a wrong block align out anew and says so', async () => {
    const wrong = join(u16(1, 8), u32(48_000, 1), u16(2, 24));
    const file = await describedChunks([chunk('fmt ', wrong), data(2400)]);
    expect(file.format).toMatchObject({ blockAlign: 24, bytesPerSecond: 1_152_000 });
    expect(file.resolved.length).toBe(100);
    expect(file.warnings).toEqual([{ code: 'fmt-inconsistent', at: 12, blockAlign: 2, bytesPerSecond: 1 }]);
  });

  test('reports a sub-format whose tail is not the common one', async () => {
    const odd = join(extensible(24, 24, 1).subarray(0, 26), bytesOf('fourteen bytes'));
    expect(codesOf(await formatOf(odd))).toEqual(['fmt-inconsistent']);
  });

  test('reads an extensible header without its extension as PCM and says so', async () => {
    const file = await formatOf(extensible(24, 24, 1).subarray(0, 18));
    expect(file.format).toMatchObject({ tag: 1, validBits: 24 });
    expect(codesOf(file)).toEqual(['fmt-short']);
  });

  test.each([
    ['too short', new Uint8Array(14), 'fmt-short'],
    ['without channels', join(u16(1, 0), u32(48_000, 0), u16(0, 24)), 'fmt-damaged'],
    ['without a sample rate', join(u16(1, 1), u32(0, 0), u16(3, 24)), 'fmt-damaged'],
  ])('that is %s gives no format and a warning', async (_, payload, code) => {
    const file = await formatOf(payload);
    expect(file.format).toBeUndefined();
    expect(file.resolved).toMatchObject({ sampleRate: undefined, length: undefined });
    expect(codesOf(file)).toEqual([code]);
  });
});
