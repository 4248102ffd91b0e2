import { isDeepStrictEqual } from 'node:util';
import { expect } from 'vitest';

/**
 * As `expect(is).toEqual(wanted)`, ten times as quick where they are the same: vitest writes nothing out then. For
 * properties that compare whole days thousands of times.
 */
export function expectSame(is: unknown, wanted: unknown, of?: string): void {
  if (!isDeepStrictEqual(is, wanted)) expect(is, of).toEqual(wanted);
}
