import { describe, expect, test } from 'vitest';
import { describeWave } from '../../../src/wave/file/describe-wave.ts';
import { READ_BUDGET } from '../../../src/wave/riff/header-reader.ts';
import {
  bext,
  buildWave,
  bytesOf,
  chunk,
  data,
  ds64,
  fmt,
  hugeData,
  ixml,
  join,
  sourceOf,
  u32,
} from '../build-wave.ts';
import { codesOf, described, describedChunks } from '../described.ts';

describe('a file that is no wave file', () => {
  test.each([
    ['empty', new Uint8Array(0), { code: 'file-empty' }],
    ['eleven bytes long', bytesOf('RIFF\0\0\0\0WAV'), { code: 'not-a-wave', found: '', size: 11 }],
    [
      'some other RIFF',
      join(bytesOf('RIFF'), u32(4), bytesOf('AVI ')),
      { code: 'not-a-wave', found: 'AVI ' },
    ],
    ['big-endian', join(bytesOf('RIFX'), u32(4), bytesOf('WAVE')), { code: 'not-a-wave', found: 'RIFX' }],
    ['text', bytesOf('scene,take,notes\r\n21A,3,'), { code: 'not-a-wave', found: 'scen' }],
    ['binary', new Uint8Array(100).fill(0x80), { code: 'not-a-wave', found: '....' }],
  ])('because it is %s is named as such', async (_, bytes, problem) => {
    const result = await describeWave(sourceOf(bytes, 'card/odd.wav'));
    expect(result).toMatchObject({ ok: false, problem: { ...problem, name: 'card/odd.wav' } });
  });
});

describe('chunks', () => {
  test('after an odd one start behind its pad byte: 12 + 8 + 495 + 1 = 516 (RIFF/WAVE specification 1991)', async () => {
    const file = await describedChunks([chunk('JUNK', new Uint8Array(495)), fmt(), data()]);
    expect(file.format?.at).toBe(516);
    expect(file.warnings).toEqual([]);
  });

  test('after a leading JUNK of 92 bytes start at 112', async () => {
    const file = await describedChunks([chunk('JUNK', new Uint8Array(92)), fmt(), data()]);
    expect(file.format?.at).toBe(112);
  });

  test('without their pad byte are found one byte earlier and reported', async () => {
    const file = await describedChunks([
      chunk('note', 'odd', { unpadded: true }),
      bext({ description: 'found' }),
      fmt(),
      data(),
    ]);
    expect(file.bext?.description).toBe('found');
    expect(file.warnings).toContainEqual({ code: 'pad-byte-missing', at: 12 + 8 + 3, after: 'note' });
  });

  test('whose pad byte is not zero are no trouble', async () => {
    const odd = chunk('note', bytesOf('odd!'), { size: 3 });
    const file = await describedChunks([odd, fmt(), data()]);
    expect(file.format?.channels).toBe(1);
    expect(file.warnings).toEqual([]);
  });

  test('nobody knows are jumped over', async () => {
    const file = await describedChunks([
      chunk('zzz9', new Uint8Array(70_000)),
      fmt(),
      data(),
      chunk('Q q1', 'x'),
    ]);
    expect(file.format?.channels).toBe(1);
    expect(file.warnings).toEqual([]);
    expect(file.bytesRead).toBeLessThan(25_000);
  });

  test('that come twice count once, except iXML', async () => {
    const file = await describedChunks([fmt(), fmt({ channels: 2 }), bext(), bext(), data(), data(10)]);
    expect(file.format?.channels).toBe(1);
    expect(file.data?.bytes).toBe(480);
    expect(codesOf(file)).toEqual(['chunk-repeated', 'chunk-repeated', 'chunk-repeated']);
  });

  test('in the wrong order are read all the same', async () => {
    const file = await describedChunks([data(), fmt()]);
    expect(file.resolved.length).toBe(160);
    expect(codesOf(file)).toEqual(['chunk-order']);
  });

  test('that point beyond the end are cut at the end', async () => {
    const file = await describedChunks([
      fmt(),
      bext({ description: 'kept' }),
      data(),
      chunk('LIST', 'x', { size: 5000 }),
    ]);
    expect(file.bext?.description).toBe('kept');
    expect(file.warnings).toMatchObject([{ code: 'chunk-past-end', id: 'LIST', declared: 5000, held: 2 }]);
  });

  test('in an endless chain of empty ones end at 256', async () => {
    const chain = Array.from({ length: 4000 }, () => chunk('JUNK', ''));
    const file = await describedChunks([fmt(), data(), ...chain]);
    expect(codesOf(file)).toEqual(['chunks-too-many']);
    expect(file.resolved.length).toBe(160);
  });

  test('scattered over a huge file never cost more than the budget', async () => {
    const wide = Array.from({ length: 255 }, () => chunk('JUNK', '', { size: 1e6, hole: 1e6 }));
    const source = buildWave([fmt(), ...wide]);
    await described(source);
    expect(source.spent()).toBeLessThan(READ_BUDGET);
    expect(source.reads()).toBeLessThan(260);
  });

  test('missing altogether leave a description with nothing in it', async () => {
    const file = await describedChunks([]);
    expect(file).toMatchObject({ format: undefined, data: undefined, bext: undefined, ixml: undefined });
    expect(codesOf(file)).toEqual(['fmt-missing', 'data-missing']);
  });

  test('that stop being readable end the walk where they do, with what came before kept', async () => {
    const file = await describedChunks([fmt(), data()], { after: new Uint8Array(64) });
    expect(file.resolved.length).toBe(160);
    expect(file.warnings).toEqual([{ code: 'chunk-id-unreadable', at: 12 + 24 + 488, found: '....' }]);
  });
});

describe('the audio', () => {
  test('is jumped over: 6 GB cost what 6 MB cost', async () => {
    const costs = [6e6, 6e9].map(async (bytes) => {
      const frames = bytes / 3;
      const source = buildWave(
        [
          ds64(bytes + 9000, bytes, frames),
          bext(),
          fmt(),
          hugeData(bytes, 0xffff_ffff),
          ixml('<SCENE>21A</SCENE>'),
        ],
        { container: 'RF64' },
      );
      const file = await described(source);
      expect(file.ixml?.scene).toBe('21A');
      expect(file.resolved.length).toBe(frames);
      return [source.spent(), source.reads()];
    });
    const [small, large] = await Promise.all(costs);
    expect(large).toEqual(small);
    expect(large![1]).toBe(2);
    expect(large![0]).toBeLessThan(16_384);
  });

  test('of a recording not closed, size 0, reaches to the end of the file (common practice, no source)', async () => {
    const file = await describedChunks([bext(), fmt(), hugeData(3_000_000, 0)], { riffSize: 0 });
    expect(file.data).toMatchObject({ bytes: 3_000_000, declaredBytes: 0 });
    expect(file.resolved.length).toBe(1_000_000);
    expect(codesOf(file)).toEqual(['data-not-closed', 'riff-size-differs']);
  });

  test('of size 0xFFFFFFFF in a plain RIFF reaches to the end of the file', async () => {
    const file = await describedChunks([fmt(), hugeData(3_000_000, 0xffff_ffff)]);
    expect(file.resolved.length).toBe(1_000_000);
    expect(file.warnings).toMatchObject([{ code: 'data-not-closed', at: 12 + 24 + 4, held: 3_000_000 }]);
  });

  test('of no samples at all is no damage', async () => {
    const file = await describedChunks([fmt(), data(0), ixml('<TAKE>4</TAKE>')]);
    expect(file.resolved).toMatchObject({ length: 0, take: '4' });
    expect(file.warnings).toEqual([]);
  });

  test('of a copy that broke off is cut at the end of the file', async () => {
    const file = await describedChunks([fmt(), hugeData(900, 9_000_000)], { riffSize: 9_000_036 });
    expect(file.resolved.length).toBe(300);
    expect(codesOf(file)).toEqual(['chunk-past-end', 'riff-size-differs']);
  });

  test('beyond 4 GiB whose 32-bit size wrapped is measured by the chunk behind it', async () => {
    const bytes = 6_220_800_000;
    const file = await describedChunks([
      fmt({ channels: 8 }),
      hugeData(bytes, bytes % 2 ** 32),
      ixml('<SCENE>9</SCENE>'),
    ]);
    expect(file.resolved).toMatchObject({ length: 259_200_000, scene: '9' });
    expect(file.warnings[0]).toMatchObject({ code: 'data-size-wrapped', at: 40, declared: 1_925_832_704 });
  });

  test('whose size leads into the middle of it does not hide the iXML at the tail', async () => {
    const lost = { size: 1_000_000, hole: 9_000_000 };
    const file = await describedChunks([
      bext(),
      fmt(),
      chunk('data', '', lost),
      ixml(`<NOTE>an i before it</NOTE><SCENE>7</SCENE>`),
    ]);
    expect(file.resolved).toMatchObject({ scene: '7', length: 333_333 });
    expect(file.warnings).toMatchObject([
      { code: 'chunk-id-unreadable' },
      { code: 'ixml-astray' },
      { code: 'data-not-whole-frames' },
    ]);
    expect(file.bytesRead).toBeLessThan(64 * 1024);
  });

  test('that does not divide into whole frames is reported and rounded down', async () => {
    const file = await describedChunks([fmt({ channels: 2 }), data(605)]);
    expect(file.resolved.length).toBe(100);
    expect(file.warnings).toEqual([{ code: 'data-not-whole-frames', at: 36, bytes: 605, blockAlign: 6 }]);
  });
});

describe('a device that fails', () => {
  test.each([0, 1])('at read %i makes that file unreadable, in words and not as a crash', async (failing) => {
    const whole = buildWave([bext(), fmt(), hugeData(5e6), ixml('<SCENE>1</SCENE>')]);
    let reads = 0;
    const source = {
      name: 'pulled.wav',
      size: whole.size,
      read: (from: number, to: number) =>
        reads++ === failing ? Promise.reject(new Error('NotFoundError')) : whole.read(from, to),
    };
    const result = await describeWave(source);
    expect(result).toMatchObject({ ok: false, problem: { code: 'file-unreadable', name: 'pulled.wav' } });
  });

  test('that gives fewer bytes than the file should have is a file that ends early', async () => {
    const whole = buildWave([bext({ description: 'head' }), fmt(), hugeData(5e6), ixml('<SCENE>1</SCENE>')]);
    const source = {
      name: 'short.wav',
      size: whole.size,
      read: (from: number, to: number) => whole.read(Math.min(from, 9000), Math.min(to, 9000)),
    };
    const file = await described(source);
    expect(file.bext?.description).toBe('head');
    expect(codesOf(file)).toContain('file-ends-early');
  });
});
