import type { Result } from '../shared/result.ts';

/**
 * Which version this window runs. `waiting`: a newer one is on the phone and starts at the next start.
 * `stale`: another window started a newer one, so parts not loaded yet may be gone; a restart mends it.
 */
export type UpdateState = 'current' | 'waiting' | 'stale';

/**
 * Whether the app would start with no signal. `ready` is said of the files, which were looked for; `partly`: it would, and
 * parts of it would be missing. `failed` means not yet. Both of these are tried again.
 */
export type OfflineState = 'preparing' | 'ready' | 'partly' | 'failed' | 'unsupported';

/** What forbids a restart just now. */
export type Busy = 'open-take' | 'not-saved';

export interface RestartRefusal {
  readonly code: 'restart-refused';
  readonly because: Busy | 'no-update' | 'other-window' | 'not-whole';
  readonly [detail: string]: unknown;
}

/** What the app hands in. Each is called with every change, never twice with the same state. */
export interface UpdateEvents {
  readonly onUpdate: (state: UpdateState) => void;
  readonly onOffline: (state: OfflineState) => void;
  /**
   * A part of the app could not be loaded; the import that wanted it also fails. Nothing is reloaded. `isOnPhone`: opening
   * the app again brings it; otherwise only signal does.
   */
  readonly onPartMissing: (isOnPhone: boolean) => void;
  readonly busyWith: () => Busy | undefined;
}

/** Keeps the app on the phone and brings newer versions in, never under somebody's hands. */
export interface UpdateWatcher {
  /**
   * To be awaited before anything is rendered. Starts a waiting version when no other window is open;
   * the page then loads anew and the promise never settles. Takes a few ms where nothing waits, 7 s at worst.
   */
  readonly takeWaiting: () => Promise<void>;
  /**
   * To be called after the first render: registers the worker, holds its promise against the files and looks for newer
   * versions. True when parts that come later can be loaded; false where files are gone and nobody answers for them.
   */
  readonly start: () => Promise<boolean>;
  /** Loads the page anew with the newer version, or says why not. Other windows are never reloaded. */
  readonly restartIntoUpdate: () => Promise<Result<'restarting', RestartRefusal>>;
}
