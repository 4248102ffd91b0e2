import { signal } from '@preact/signals';
import { options } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Saving } from '../../src/app/saving.ts';
import { drawAfterDisk } from '../../src/ui/parts/draw-after-disk.ts';

const saved: Saving = { state: 'saved', waiting: 0, because: null, regained: 0 };
const saving = signal(saved);
const draw = vi.fn();
let answer = (): void => {};
let disk = Promise.resolve();
let end = (): void => {};

const turn = (): Promise<unknown> => vi.advanceTimersByTimeAsync(0);
const askToDraw = (): void => options.debounceRendering?.(draw);

beforeEach(() => {
  vi.useFakeTimers();
  draw.mockReset();
  disk = new Promise((done) => {
    answer = done;
  });
  saving.value = saved;
  end = drawAfterDisk({ saving, settled: () => disk });
});
afterEach(() => {
  end();
  vi.useRealTimers();
});

test('draws at once where nothing is being saved', async () => {
  askToDraw();
  expect(draw).not.toHaveBeenCalled();
  await turn();
  expect(draw).toHaveBeenCalledOnce();
});

test('a tap that begins to save after it changed the day is drawn when the disk has it', async () => {
  askToDraw();
  saving.value = { ...saved, state: 'saving', waiting: 1 };
  await turn();
  expect(draw).not.toHaveBeenCalled();
  answer();
  await turn();
  expect(draw).toHaveBeenCalledOnce();
  await vi.advanceTimersByTimeAsync(100);
  expect(draw).toHaveBeenCalledOnce();
});

test('a disk that does not answer is waited for 4 ms', async () => {
  saving.value = { ...saved, state: 'saving', waiting: 1 };
  askToDraw();
  await vi.advanceTimersByTimeAsync(3);
  expect(draw).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1);
  expect(draw).toHaveBeenCalledOnce();
});

test('nothing waits for a disk that has refused', async () => {
  saving.value = { ...saved, state: 'not-saved', waiting: 1, because: 'QuotaExceededError' };
  askToDraw();
  await turn();
  expect(draw).toHaveBeenCalledOnce();
});
