/** What can go wrong as data: a code that `ui/words` turns into a sentence, and what the sentence needs. */
export interface Problem {
  readonly code: string;
  readonly [detail: string]: unknown;
}

export type Result<T, P extends Problem = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: P };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });

export const fail = <P extends Problem>(problem: P): Result<never, P> => ({ ok: false, problem });
