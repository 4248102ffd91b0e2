import { signal } from '@preact/signals';

/** Which version this window runs, and whether the app would start offline. */
export const version = signal<{
  readonly update: 'current' | 'waiting' | 'stale';
  readonly offline: 'preparing' | 'ready' | 'partly' | 'failed' | 'unsupported';
}>({ update: 'current', offline: 'preparing' });
