import type { Problem } from './problem.ts';

export type { Problem, ProblemCode, ProblemOf } from './problem.ts';

/** Why it failed, as data. Whatever reaches a screen is a `Problem`; within a room it may be anything. */
interface Because {
  readonly code: string;
}

export type Result<T, P extends Because = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: P };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });

export const fail = <const P extends Because>(problem: P): Result<never, P> => ({ ok: false, problem });
