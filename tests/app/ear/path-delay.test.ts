import { afterEach, describe, expect, test, vi } from 'vitest';
import { delayFromTaps, keepDelay, keptDelay } from '../../../src/app/ear/path-delay.ts';

describe('the delay from taps', () => {
  // 10:00:00:05 was heard at 5,200: its second began at 5,000, as heard.
  const heard = { frames: 900_005, rate: '25', atMs: 5200 } as const;

  test('is how much later a second was heard than tapped', () => {
    const taps = [960, 1955, 2970, 3940, 4962];
    expect(delayFromTaps(taps, heard)).toEqual({ ms: 40, spreadMs: 5 });
  });

  test('may be less than nothing, where taps came late', () => {
    expect(delayFromTaps([1010, 2010, 3010], heard)!.ms).toBe(-10);
  });

  test('counts real seconds at the slowed rates: thirty frames are 1001 ms', () => {
    const slow = { frames: 108_000, rate: '29.97', atMs: 5000 } as const;
    const found = delayFromTaps([5000 - 3003 - 20, 5000 - 2002 - 20, 5000 - 1001 - 20], slow)!;
    expect(found.ms).toBeCloseTo(20, 6);
  });

  test('needs three taps, and does not care for one that went wrong', () => {
    expect(delayFromTaps([1000, 2000], heard)).toBeUndefined();
    expect(delayFromTaps([960, 1960, 2650, 3960, 4960], heard)!.ms).toBe(40);
  });
});

describe('the delay that is kept', () => {
  afterEach(() => vi.unstubAllGlobals());
  const storage = (): Storage => {
    const kept = new Map<string, string>();
    return {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key),
    } as Storage;
  };

  test('comes back, and can be forgotten', () => {
    vi.stubGlobal('localStorage', storage());
    expect(keptDelay()).toBeUndefined();
    keepDelay({ ms: 38.4, spreadMs: 5.2 });
    expect(keptDelay()).toEqual({ ms: 38, spreadMs: 6 });
    keepDelay(undefined);
    expect(keptDelay()).toBeUndefined();
  });

  test.each(['', '12', 'a b', '9000 5', 'NaN NaN', '38 -x'])('of %j is none', (text) => {
    const damaged = storage();
    damaged.setItem('rollbook-microphone-delay', text);
    vi.stubGlobal('localStorage', damaged);
    expect(keptDelay()).toBeUndefined();
  });

  test('storage that is refused is no fault', () => {
    vi.stubGlobal('localStorage', undefined);
    expect(keptDelay()).toBeUndefined();
    expect(() => keepDelay({ ms: 1, spreadMs: 1 })).not.toThrow();
  });
});
