import { expect, test } from 'vitest';
import type { ByteSource } from '../../../src/wave/riff/header-reader.ts';
import { HeaderReader, READ_BUDGET } from '../../../src/wave/riff/header-reader.ts';

/** A file whose every byte is its own place modulo 251, and what was asked of it. */
function countingSource(size: number, held = size): { source: ByteSource; asked: [number, number][] } {
  const asked: [number, number][] = [];
  const read = (from: number, to: number): Promise<Uint8Array> => {
    asked.push([from, to]);
    return Promise.resolve(new Uint8Array(Math.min(to, held) - from).map((_, at) => (from + at) % 251));
  };
  return { source: { name: 'a.wav', size, read }, asked };
}

test('fetches 8 KiB at the head, 16 KiB at the second place and 1 KiB at every further one', async () => {
  const { source, asked } = countingSource(1e6);
  const reader = new HeaderReader(source);
  for (const at of [0, 200_000, 400_000, 600_000]) await reader.bytes(at, at + 8);
  expect(asked).toEqual([
    [0, 8192],
    [200_000, 216_384],
    [400_000, 401_024],
    [600_000, 601_024],
  ]);
  expect(reader.bytesRead).toBe(8192 + 16_384 + 1024 + 1024);
});

test('fetches what is asked for where that is more, and nothing behind the end', async () => {
  const { source, asked } = countingSource(10_000);
  const reader = new HeaderReader(source);
  await reader.bytes(0, 9000);
  await reader.bytes(9000, 9010);
  expect(asked).toEqual([
    [0, 9000],
    [9000, 10_000],
  ]);
});

test('gives what it holds again without asking, up to the last byte held', async () => {
  const { source, asked } = countingSource(1e6);
  const reader = new HeaderReader(source);
  await reader.bytes(1000, 1004);
  expect(await reader.bytes(1000 + 8190, 1000 + 8192)).toEqual({
    ok: true,
    value: Uint8Array.of(9190 % 251, 9191 % 251),
  });
  expect(asked).toHaveLength(1);
  await reader.bytes(1000 + 8190, 1000 + 8193);
  expect(asked).toHaveLength(2);
  await reader.bytes(999, 1001);
  expect(asked).toHaveLength(3);
});

test('reads up to the end of the file and not one byte further', async () => {
  const { source } = countingSource(100);
  const reader = new HeaderReader(source);
  expect(await reader.bytes(98, 100)).toEqual({ ok: true, value: Uint8Array.of(98, 99) });
  expect(await reader.bytes(98, 101)).toEqual({ ok: false, problem: { code: 'file-ends-early', at: 100 } });
});

test('says where a file ended that gave fewer bytes than its size', async () => {
  const reader = new HeaderReader(countingSource(1000, 600).source);
  expect(await reader.bytes(500, 600)).toMatchObject({ ok: true });
  expect(await reader.bytes(550, 650)).toEqual({ ok: false, problem: { code: 'file-ends-early', at: 600 } });
});

test('spends its budget to the last byte and no more', async () => {
  const { source, asked } = countingSource(2 * READ_BUDGET);
  const reader = new HeaderReader(source);
  expect(READ_BUDGET).toBe(5 * 1024 * 1024);
  expect(await reader.bytes(0, READ_BUDGET - 20_000)).toMatchObject({ ok: true });
  expect(await reader.bytes(READ_BUDGET, READ_BUDGET + 20_001)).toEqual({
    ok: false,
    problem: { code: 'read-budget-spent', at: READ_BUDGET },
  });
  expect(await reader.bytes(READ_BUDGET, READ_BUDGET + 20_000)).toMatchObject({ ok: true });
  expect(reader.bytesRead).toBe(READ_BUDGET);
  expect(await reader.bytes(0, 1)).toMatchObject({ ok: true });
  expect(asked).toHaveLength(2);
});

test('says where it was when the device failed', async () => {
  const read = (): Promise<never> => Promise.reject(new Error('pulled'));
  const reader = new HeaderReader({ name: 'a.wav', size: 100, read });
  expect(await reader.bytes(40, 50)).toEqual({ ok: false, problem: { code: 'file-unreadable', at: 40 } });
  expect(reader.bytesRead).toBe(0);
});
