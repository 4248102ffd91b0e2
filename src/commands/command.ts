import type { Draft } from '../facts/fact.ts';
import { fail, type Problem, type Result } from '../shared/result.ts';

/** The result of a command: the facts of one action, or why there are none. */
export type CommandResult = Result<readonly Draft[]>;

/** The moment of a command, and its phone. */
export interface Moment {
  /** UTC ms by the phone's clock. */
  readonly atMs: number;
  /** Minutes east of UTC. */
  readonly zone: number;
  /** The database of this phone's facts; omitted if there is only one phone. */
  readonly database?: string;
}

/** Where a change goes: just before this take, or at the end. */
export interface Placing {
  readonly before?: string | undefined;
}

export const placed = <T extends Draft>(draft: T, { before }: Placing): T =>
  before ? { ...draft, before } : draft;

/** Combines several commands: the first failure, or all drafts. */
export function together(...results: readonly CommandResult[]): CommandResult {
  const drafts: Draft[] = [];
  for (const one of results) {
    if (!one.ok) return one;
    drafts.push(...one.value);
  }
  return { ok: true, value: drafts };
}

export const missing = (what: string, id: string): Result<never, Problem> =>
  fail({ code: 'not-on-this-day', what, id });
