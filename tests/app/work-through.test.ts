import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { workThrough } from '../../src/app/work-through.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** Steps of 5 ms each, saying how many there were after every second one. */
function* steps(count: number): Generator<number | undefined, void> {
  for (let at = 1; at <= count; at += 1) {
    vi.spyOn(performance, 'now').mockReturnValue(at * 5);
    yield at % 2 === 0 ? at : undefined;
  }
}

const start = (count: number, failed = vi.fn()) => {
  vi.spyOn(performance, 'now').mockReturnValue(0);
  const said: number[] = [];
  const stop = workThrough(steps(count), 10, (news) => said.push(news), failed);
  return { said, stop, failed };
};

test('begins behind the tap that asked, works for a slice, and lets others come between', () => {
  const { said } = start(6);
  expect(said).toEqual([]);
  vi.advanceTimersToNextTimer();
  expect(said).toEqual([2]);
  vi.advanceTimersToNextTimer();
  expect(said).toEqual([2, 4]);
  vi.runAllTimers();
  expect(said).toEqual([2, 4, 6]);
});

test('does nothing more once it is stopped', () => {
  const { said, stop } = start(6);
  vi.advanceTimersToNextTimer();
  stop();
  vi.runAllTimers();
  expect(said).toEqual([2]);
});

test('stopped by what it says, goes no further', () => {
  const said: number[] = [];
  const stop = workThrough(
    (function* () {
      yield 1;
      yield 2;
    })(),
    1000,
    (news) => {
      said.push(news);
      stop();
    },
    vi.fn(),
  );
  vi.runAllTimers();
  expect(said).toEqual([1]);
});

test('tells of a step that throws, and ends', () => {
  const failed = vi.fn();
  const error = new Error('broken');
  workThrough(
    (function* (): Generator<number | undefined, void> {
      yield undefined;
      throw error;
    })(),
    1000,
    vi.fn(),
    failed,
  );
  vi.runAllTimers();
  expect(failed.mock.calls).toEqual([[error]]);
});
