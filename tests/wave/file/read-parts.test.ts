import { describe, expect, test } from 'vitest';
import { bext, bextPayload, buildWave, chunk, data, ds64, fmt, hugeData, ixml } from '../build-wave.ts';
import { codesOf, described, describedChunks } from '../described.ts';

describe('what is missing, twice or in the wrong place', () => {
  test('is told with its place in the file', async () => {
    expect((await describedChunks([])).warnings).toEqual([
      { code: 'fmt-missing', at: 12 },
      { code: 'data-missing', at: 12 },
    ]);
    expect((await describedChunks([data(6), fmt()])).warnings).toEqual([
      { code: 'chunk-order', at: 12 + 14 },
    ]);
    expect((await describedChunks([fmt(), fmt(), data(2), data(2), bext(), bext()])).warnings).toEqual([
      { code: 'chunk-repeated', at: 12 + 24, id: 'fmt ' },
      { code: 'chunk-repeated', at: 12 + 24 + 24 + 10, id: 'data' },
      { code: 'chunk-repeated', at: 12 + 24 + 24 + 10 + 10 + 610, id: 'bext' },
      { code: 'data-not-whole-frames', at: 12 + 24 + 24, bytes: 2, blockAlign: 3 },
    ]);
  });
});

describe('a bext chunk', () => {
  test('is read as far as its fixed part, however long it is', async () => {
    const long = (size: number) => {
      const payload = new Uint8Array(size);
      payload.set(bextPayload({ description: 'long' }));
      return chunk('bext', payload);
    };
    for (const size of [602, 604, 64 * 1024 + 2]) {
      const file = await describedChunks([long(size), fmt(), data()]);
      expect(codesOf(file)).toEqual([]);
      expect(file.bext?.description).toBe('long');
    }
  });

  test('behind what the device gives is left out and told, and the rest is read', async () => {
    const long = chunk('bext', new Uint8Array(30_000));
    const whole = buildWave([fmt(), data(), long, ixml('<SCENE>1</SCENE>')]);
    // The device holds the headers of the chunks and loses the middle of bext.
    const hole = 524 + 8 + 100;
    const read = (from: number, to: number) => whole.read(from, from < hole ? Math.min(to, hole) : to);
    const file = await described({ name: 'short.wav', size: whole.size, read });
    expect(file).toMatchObject({ bext: undefined, ixml: { scene: '1' }, format: { channels: 1 } });
    expect(file.warnings).toEqual([{ code: 'file-ends-early', at: 524 + 8 + 100 }]);
  });
});

describe('the sample frames that RF64 counts', () => {
  const counted = (frames: number, more: readonly ReturnType<typeof data>[] = [data(480)]) =>
    described(
      buildWave([ds64(0, 480, frames), fmt(), ...more], { container: 'RF64', riffSize: 0xffff_fffe }),
    );
  const about = (file: Awaited<ReturnType<typeof counted>>) =>
    file.warnings.filter(({ code }) => code === 'sample-count-differs');

  test('are compared with the audio, and a difference is told with both', async () => {
    expect(about(await counted(160))).toEqual([]);
    expect(about(await counted(161))).toEqual([
      { code: 'sample-count-differs', at: 12, counted: 161, frames: 160 },
    ]);
  });

  test('are not compared where none were counted or the audio is cut', async () => {
    expect(about(await counted(0))).toEqual([]);
    expect(about(await counted(7, []))).toEqual([]);
    expect(about(await counted(7, [hugeData(480, 4800)]))).toEqual([]);
  });
});

test('the audio is described by its place and by what the file holds of it', async () => {
  const file = await describedChunks([fmt(), hugeData(480, 4800)], { riffSize: 4836 });
  expect(file.data).toEqual({ start: 12 + 24 + 8, bytes: 480, declaredBytes: 4800 });
  expect(file).toMatchObject({ name: '21A-3.wav', size: 12 + 24 + 488, container: 'RIFF', length: 160 });
});
