import type { Draft } from '../facts/fact.ts';
import { fail, type Problem, type Result } from '../shared/result.ts';

/** What a command gives: the facts of one action, or why there are none. */
export type CommandResult = Result<readonly Draft[]>;

/** The moment a command is given, and on which phone, handed in. */
export interface Moment {
  /** UTC ms by the phone's clock. */
  readonly atMs: number;
  /** Minutes east of UTC. */
  readonly zone: number;
  /** The database that this phone's facts are written under; not said where there is one phone only. */
  readonly database?: string;
}

/** Where a change belongs: just before this take, or where it is said. */
export interface Placing {
  readonly before?: string | undefined;
}

export const placed = <T extends Draft>(draft: T, { before }: Placing): T =>
  before ? { ...draft, before } : draft;

/** The problems of several commands given as one: the first that failed, or the drafts of all. */
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
