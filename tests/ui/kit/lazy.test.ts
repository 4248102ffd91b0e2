import { h } from 'preact';
import { expect, test, vi } from 'vitest';
import { afterNextPaint } from '../../../src/ui/kit/after-next-paint.ts';
import { lazy, preloadAll } from '../../../src/ui/kit/lazy.tsx';
import { show } from '../small-dom.ts';

const Screen = () => h('p', null, 'the screen');
const Missing = () => h('p', null, 'could not be loaded');

test('a screen shows nothing until it is there, then at once; it is loaded once', async () => {
  const load = vi.fn(async () => Screen);
  const Part = lazy(load);
  const first = show(h(Part, null));
  expect(first.root.textContent).toBe('');
  await first.settled();
  expect(first.root.textContent).toBe('the screen');
  expect(show(h(Part, null)).root.textContent).toBe('the screen');
  await Part.preload();
  expect(load).toHaveBeenCalledOnce();
});

test('where a screen cannot be loaded that is shown in its place; the next time it is tried again', async () => {
  let isThere = false;
  const Part = lazy(async () => {
    if (!isThere) throw new Error('no signal');
    return Screen;
  }, Missing);
  const first = show(h(Part, null));
  await first.settled();
  expect(first.root.textContent).toBe('could not be loaded');
  first.gone();
  isThere = true;
  const again = show(h(Part, null));
  await again.settled();
  expect(again.root.textContent).toBe('the screen');
});

test('a part that was preloaded after it was drawn, and before its effect, is shown', async () => {
  const Part = lazy(async () => Screen);
  const { root, settled } = show(h(Part, null));
  await preloadAll().catch(() => {});
  await settled();
  expect(root.textContent).toBe('the screen');
});

test('work for after the paint runs after it, and not at all once it is called off', async () => {
  const frames: (() => void)[] = [];
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => frames.push(work));
  vi.stubGlobal('cancelAnimationFrame', (at: number) => {
    frames[at - 1] = () => {};
  });
  vi.useFakeTimers();
  const [done, before, between] = [vi.fn(), vi.fn(), vi.fn()];
  afterNextPaint(done);
  afterNextPaint(before)();
  const callOff = afterNextPaint(between);
  for (const frame of frames) frame();
  expect(done).not.toHaveBeenCalled();
  callOff();
  vi.runAllTimers();
  expect(done).toHaveBeenCalledOnce();
  expect(before).not.toHaveBeenCalled();
  expect(between).not.toHaveBeenCalled();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});
