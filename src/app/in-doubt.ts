import type { Day } from '../day/model.ts';
import type { Conflict } from '../day/phones/conflicts.ts';
import type { Problem } from '../shared/result.ts';

/** Why a day cannot be carried over without a word. */
export interface InDoubt {
  readonly code: 'next-day-in-doubt';
  readonly day: Day;
  /** Entries that cannot be read, and those of a newer version of the app. */
  readonly damaged: number;
  readonly newer: number;
  /** Actions that a closed window held: offered, and neither restored nor discarded yet. */
  readonly unsaved: number;
  /** Where phones differ in what goes along. */
  readonly differing: readonly Conflict[];
}

/** What was in doubt was shown, and it is wanted all the same. */
export interface Agreed {
  readonly evenInDoubt: boolean;
}

export const isInDoubt = (problem: Problem | InDoubt): problem is InDoubt =>
  problem.code === 'next-day-in-doubt';
