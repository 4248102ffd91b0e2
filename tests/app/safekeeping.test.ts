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

describe('the request that the browser keeps the data', () => {
  test('is made once, however often there is a reason', async () => {
    const keeper = browser(false, false);
    const safe = safekeeping(keeper);
    expect(safe.promised.value).toBe('not-asked');
    expect(keeper.asked.times).toBe(0);
    safe.ask();
    safe.ask();
    await expect.poll(() => safe.promised.value).toBe('not-promised');
    safe.ask();
    expect(keeper.asked.times).toBe(1);
  });

  test('is not made where the promise was given before', async () => {
    const keeper = browser(true, true);
    const safe = safekeeping(keeper);
    await expect.poll(() => safe.promised.value).toBe('promised');
    safe.ask();
    expect(keeper.asked.times).toBe(0);
  });

  test('counts as refused where the browser fails, and cannot be made where there is no way', async () => {
    const safe = safekeeping(browser(false, 'throws'));
    safe.ask();
    await expect.poll(() => safe.promised.value).toBe('not-promised');
    expect(safekeeping(undefined).promised.value).toBe('cannot-ask');
  });
});
