import type { Result } from '../shared/result.ts';

/**
 * Which version this window runs. `waiting`: a newer one starts at the next start. `stale`: another window
 * started a newer one, so parts not loaded yet may be gone; a restart fixes it.
 */
export type UpdateState = 'current' | 'waiting' | 'stale';

/**
 * Whether the app would start with no signal. `ready`: the files were checked. `partly`: it would start, but
 * with parts missing. `failed`: not yet. The last two are retried.
 */
export type OfflineState = 'preparing' | 'ready' | 'partly' | 'failed' | 'unsupported';

/** What forbids a restart just now. */
export type Busy = 'open-take' | 'not-saved';

export interface RestartRefusal {
  readonly code: 'restart-refused';
  readonly because: Busy | 'no-update' | 'other-window' | 'not-whole';
  readonly [detail: string]: unknown;
}

/** Supplied by the app. Each is called on every change, never twice with the same state. */
export interface UpdateEvents {
  readonly onUpdate: (state: UpdateState) => void;
  readonly onOffline: (state: OfflineState) => void;
  /**
   * Part of the app could not be loaded; the import that wanted it fails too. Nothing reloads. `isOnPhone`:
   * reopening the app brings it back; otherwise it needs a signal.
   */
  readonly onPartMissing: (isOnPhone: boolean) => void;
  readonly busyWith: () => Busy | undefined;
}

/** Keeps the app on the phone and updates it, never while it is in use. */
export interface UpdateWatcher {
  /**
   * Await before rendering. Starts a waiting version if no other window is open; the page then reloads and
   * the promise never settles. Takes a few ms if nothing waits, 7 s at worst.
   */
  readonly takeWaiting: () => Promise<void>;
  /**
   * Call after the first render: registers the worker, checks its files and looks for newer versions. True if
   * parts loaded later are available; false if files are gone and cannot be fetched.
   */
  readonly start: () => Promise<boolean>;
  /** Reloads into the newer version, or says why not. Other windows are never reloaded. */
  readonly restartIntoUpdate: () => Promise<Result<'restarting', RestartRefusal>>;
}
