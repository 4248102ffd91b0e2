import { WORKER, waitingWorker } from './registration.ts';
import type { OfflineState } from './update-watcher.ts';
import { loaded } from './windows.ts';

const HOUR_MS = 3_600_000;

export interface RegistrationEvents {
  readonly onOffline: (state: OfflineState) => void;
  /** Called when a version came to wait or stopped waiting. */
  readonly onWaiting: (isWaiting: boolean) => void;
}

/** Registers the worker now and looks for a newer one when the app comes back to the screen, at most hourly. */
export function keepRegistered(events: RegistrationEvents): void {
  let registration: ServiceWorkerRegistration | undefined;
  let askedAtMs = 0;
  let isAsking = false;

  const ask = async (): Promise<void> => {
    isAsking = true;
    askedAtMs = Date.now();
    try {
      if (registration) await registration.update();
      else registration = await register(events);
    } catch {
      // No signal, most likely: what is on the phone goes on working.
      if (!registration?.active) events.onOffline('failed');
    }
    isAsking = false;
  };
  const askWhenDue = (): void => {
    // The phone's clock may have been set back: any distance counts.
    const isDue = !registration || Math.abs(Date.now() - askedAtMs) >= HOUR_MS;
    if (isDue && !isAsking && document.visibilityState === 'visible') void ask();
  };
  document.addEventListener('visibilitychange', askWhenDue);
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) askWhenDue();
  });
  // The first visit's own files come first; the worker then fetches them all again for the phone.
  void loaded().then(ask);
}

async function register({ onOffline, onWaiting }: RegistrationEvents): Promise<ServiceWorkerRegistration> {
  const registration = await navigator.serviceWorker.register(WORKER, { updateViaCache: 'none' });
  const look = (): void => {
    const isComing = registration.installing ?? registration.waiting;
    onOffline(registration.active ? 'ready' : isComing ? 'preparing' : 'failed');
    onWaiting(waitingWorker(registration) !== undefined);
  };
  const follow = (): void => {
    registration.installing?.addEventListener('statechange', look);
    look();
  };
  registration.addEventListener('updatefound', follow);
  follow();
  return registration;
}
