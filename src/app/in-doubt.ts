import type { Day } from '../day/model.ts';
import type { Conflict } from '../day/phones/conflicts.ts';
import type { Problem } from '../shared/result.ts';

/** Why a day cannot be carried over without asking. */
export interface InDoubt {
  readonly code: 'next-day-in-doubt';
  readonly day: Day;
  /** Entries that are unreadable or from a newer version of the app. */
  readonly damaged: number;
  readonly newer: number;
  /** Actions from a closed window, neither restored nor discarded yet. */
  readonly unsaved: number;
  /** Where phones disagree about what would be carried over. */
  readonly differing: readonly Conflict[];
}

/** The user has seen these doubts and wants to go on. */
export interface Agreed {
  readonly evenInDoubt: boolean;
}

export const isInDoubt = (problem: Problem | InDoubt): problem is InDoubt =>
  problem.code === 'next-day-in-doubt';
