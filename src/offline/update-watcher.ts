import type { Result } from '../shared/result.ts';

/**
 * Which version this window runs. `waiting`: a newer one is on the phone and starts at the next start.
 * `stale`: another window started a newer one, so parts not loaded yet may be gone; a restart mends it.
 */
export type UpdateState = 'current' | 'waiting' | 'stale';

/** Whether the app would start with no signal: `failed` means not yet, and it is tried again. */
export type OfflineState = 'preparing' | 'ready' | 'failed' | 'unsupported';

/** What forbids a restart just now. */
export type Busy = 'open-take' | 'not-saved';

export interface RestartRefusal {
  readonly code: 'restart-refused';
  readonly because: Busy | 'no-update' | 'other-window';
  readonly [detail: string]: unknown;
}

/** What the app hands in. Each is called with every change, never twice with the same state. */
export interface UpdateEvents {
  readonly onUpdate: (state: UpdateState) => void;
  readonly onOffline: (state: OfflineState) => void;
  /** A part of the app could not be loaded; the import that wanted it also fails. Nothing is reloaded. */
  readonly onPartMissing: () => void;
  readonly busyWith: () => Busy | undefined;
}

/** Keeps the app on the phone and brings newer versions in, never under somebody's hands. */
export interface UpdateWatcher {
  /**
   * To be awaited before anything is rendered. Starts a waiting version when no other window is open;
   * the page then loads anew and the promise never settles. Takes a few ms where nothing waits, 5 s at worst.
   */
  readonly settle: () => Promise<void>;
  /** To be called after the first render: registers the worker and looks for newer versions. */
  readonly start: () => void;
  /** Loads the page anew with the newer version, or says why not. Other windows are never reloaded. */
  readonly restartIntoUpdate: () => Promise<Result<'restarting', RestartRefusal>>;
}
