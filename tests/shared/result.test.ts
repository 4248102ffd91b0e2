import { expect, test } from 'vitest';
import { once } from '../../src/shared/once.ts';
import { fail, ok } from '../../src/shared/result.ts';

test('what went well is told from what went wrong, and both carry what they hold', () => {
  expect(ok(7)).toEqual({ ok: true, value: 7 });
  expect(fail({ code: 'too-long', most: 7 })).toEqual({ ok: false, problem: { code: 'too-long', most: 7 } });
});

test.each([['an answer'], [undefined], [null], [0], [false]])('asks once only, also for %s', (answer) => {
  let asked = 0;
  const known = once(() => {
    asked += 1;
    return answer;
  });
  expect(asked).toBe(0);
  expect([known(), known(), known()]).toEqual([answer, answer, answer]);
  expect(asked).toBe(1);
});
