import { type ReadonlySignal, signal } from '@preact/signals';
import type { Problem } from '../../shared/result.ts';

/** How a live day stands with its server. Alone is the normal state of a set. */
export type LiveState =
  | { readonly is: 'alone'; readonly problem: Problem | null }
  /** How many messages are still to be read. */
  | { readonly is: 'catching-up'; readonly left: number }
  /** `problem`: what could not be given though the server is there. `owes`: something here is not acknowledged yet. */
  | { readonly is: 'live'; readonly problem: Problem | null; readonly owes: boolean };

const state = signal<LiveState | null>(null);

/** Of the open day; null for one that was never put live. */
export const liveState: ReadonlySignal<LiveState | null> = state;

export const tellLive = (now: LiveState | null): void => {
  state.value = now;
};
