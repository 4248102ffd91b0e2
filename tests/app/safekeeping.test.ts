import { describe, expect, test } from 'vitest';
import { safekeeping } from '../../src/app/safekeeping.ts';

/** A browser that counts how often it was asked. */
function browser(already: boolean, answers: boolean | 'throws') {
  const asked = { times: 0 };
  return {
    asked,
    persisted: async () => already,
    persist: async () => {
      asked.times += 1;
      if (answers === 'throws') throw new TypeError('no');
      return answers;
    },
  };
}

/** What a phone remembers from one start to the next. */
function memory() {
  const kept = new Map<string, string>();
  return {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => void kept.set(name, value),
  };
}

describe('the request that the browser keeps the data', () => {
  test('is made once, however often there is a reason', async () => {
    const keeper = browser(false, false);
    const safe = safekeeping(keeper, memory());
    expect(safe.promised.value).toBe('not-asked');
    expect(keeper.asked.times).toBe(0);
    safe.ask();
    safe.ask();
    await expect.poll(() => safe.promised.value).toBe('not-promised');
    safe.ask();
    expect(keeper.asked.times).toBe(1);
  });

  test('is not made again at a later start; a promise given meanwhile is seen', async () => {
    const phone = memory();
    const keeper = browser(false, false);
    safekeeping(keeper, phone).ask();
    const later = safekeeping(keeper, phone);
    later.ask();
    expect(later.promised.value).toBe('not-promised');
    expect(keeper.asked.times).toBe(1);
    const given = safekeeping(browser(true, true), phone);
    await expect.poll(() => given.promised.value).toBe('promised');
  });

  test('is not made where the promise was given before', async () => {
    const keeper = browser(true, true);
    const safe = safekeeping(keeper, memory());
    await expect.poll(() => safe.promised.value).toBe('promised');
    safe.ask();
    expect(keeper.asked.times).toBe(0);
  });

  test('counts as refused where the browser fails, and cannot be made where there is no way', async () => {
    const safe = safekeeping(browser(false, 'throws'), memory());
    safe.ask();
    await expect.poll(() => safe.promised.value).toBe('not-promised');
    expect(safekeeping(undefined, memory()).promised.value).toBe('cannot-ask');
  });
});
