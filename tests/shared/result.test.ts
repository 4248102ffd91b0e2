import { expect, test } from 'vitest';
import { fail, ok } from '../../src/shared/result.ts';

test('what went well is told from what went wrong, and both carry what they hold', () => {
  expect(ok(7)).toEqual({ ok: true, value: 7 });
  expect(fail({ code: 'too-long', most: 7 })).toEqual({ ok: false, problem: { code: 'too-long', most: 7 } });
});
