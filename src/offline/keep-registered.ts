import { Workbox } from 'workbox-window';
import { type Kept, keptBy } from './kept-files.ts';
import { WORKER, waitingWorker } from './registration.ts';
import type { OfflineState } from './update-watcher.ts';

const HOUR_MS = 3_600_000;

export interface RegistrationEvents {
  readonly onOffline: (state: OfflineState) => void;
  /** Called when a version came to wait or stopped waiting. */
  readonly onWaiting: (isWaiting: boolean) => void;
}

/** Looks again at what the worker is and has; true where nothing is known to be missing. */
type Look = () => Promise<boolean>;

/**
 * Registers the worker now, and looks for a newer one and at the files when the app comes back to the screen, at most
 * hourly; at the files whenever it or the signal comes back where it is not ready. Resolves with the first look at them.
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
        // Once the page is loaded: the first visit's own files come first, and the worker then fetches them all again.
        registration = await workbox.register();
        look = registration && follow(registration, { ...events, onOffline });
      }
    } catch {
      // No signal, most likely: what is on the phone goes on working.
      if (!registration?.active) onOffline('failed');
    }
    isAsking = false;
  };
  const askWhenDue = (): void => {
    if (document.visibilityState !== 'visible') return;
    // The phone's clock may have been set back: any distance counts.
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

/**
 * Has it looked at with every change of the registration. Workbox itself watches no update after the first that it did
 * not begin.
 */
function follow(registration: ServiceWorkerRegistration, { onOffline, onWaiting }: RegistrationEvents): Look {
  const look: Look = async () => {
    const { active, installing, waiting } = registration;
    onWaiting(waitingWorker(registration) !== undefined);
    if (!active) {
      onOffline(installing || waiting ? 'preparing' : 'failed');
      return true;
    }
    const kept = await keptBy(active);
    // Another one is in charge by now, and the answer is not about its files.
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
