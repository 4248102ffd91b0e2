import { Workbox } from 'workbox-window';
import { type Kept, keptBy } from './kept-files.ts';
import { WORKER, waitingWorker } from './registration.ts';
import type { OfflineState } from './update-watcher.ts';

const HOUR_MS = 3_600_000;

export interface RegistrationEvents {
  readonly onOffline: (state: OfflineState) => void;
  /** Called when a version starts or stops waiting. */
  readonly onWaiting: (isWaiting: boolean) => void;
}

/** Checks the worker and its files; true if nothing is known to be missing. */
type Look = () => Promise<boolean>;

/**
 * Registers the worker. Whenever the app comes back to the screen, at most hourly, it looks for a newer
 * version and checks the files; while the app is not ready offline, it checks them every time the app or the
 * signal comes back. Resolves after the first check.
 */
export function keepRegistered(events: RegistrationEvents): Promise<boolean> {
  const workbox = new Workbox(WORKER, { updateViaCache: 'none' });
  let registration: ServiceWorkerRegistration | undefined;
  let look: Look | undefined;
  let isReady = false;
  let askedAtMs = 0;
  let isAsking = false;
  const onOffline = (state: OfflineState): void => {
    isReady = state === 'ready';
    events.onOffline(state);
  };

  const ask = async (): Promise<void> => {
    isAsking = true;
    askedAtMs = Date.now();
    try {
      if (registration) await workbox.update();
      else {
        // After the page has loaded: its own files come first, and the worker then fetches them all again.
        registration = await workbox.register();
        look = registration && follow(registration, { ...events, onOffline });
      }
    } catch {
      // Probably no signal; what is on the phone keeps working.
      if (!registration?.active) onOffline('failed');
    }
    isAsking = false;
  };
  const askWhenDue = (): void => {
    if (document.visibilityState !== 'visible') return;
    // Any distance counts, because the phone's clock may have been set back.
    const isDue = !registration || Math.abs(Date.now() - askedAtMs) >= HOUR_MS;
    if (isDue && !isAsking) void ask();
    if (isDue || !isReady) void look?.();
  };
  document.addEventListener('visibilitychange', askWhenDue);
  window.addEventListener('online', askWhenDue);
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) askWhenDue();
  });
  return ask().then(() => look?.() ?? true);
}

/** Checks with every change. Workbox only watches the first update that it did not start itself. */
function follow(registration: ServiceWorkerRegistration, { onOffline, onWaiting }: RegistrationEvents): Look {
  const look: Look = async () => {
    const { active, installing, waiting } = registration;
    onWaiting(waitingWorker(registration) !== undefined);
    if (!active) {
      onOffline(installing || waiting ? 'preparing' : 'failed');
      return true;
    }
    const kept = await keptBy(active);
    // Another worker has taken over, so the answer is not about its files.
    if (registration.active !== active) return look();
    onOffline(OFFLINE[kept]);
    return kept === 'all';
  };
  const again = (): void => void look();
  const followNew = (): void => registration.installing?.addEventListener('statechange', again);
  registration.addEventListener('updatefound', () => {
    followNew();
    again();
  });
  followNew();
  return look;
}

const OFFLINE: Record<Kept, OfflineState> = { all: 'ready', some: 'partly', 'no-start': 'failed' };
