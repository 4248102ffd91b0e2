// This name must never change: a phone that knows the old one would keep the old version for good.
export const WORKER = '/sw.js';

/** Undefined if there is none yet, or the browser refuses to say. */
export const readRegistration = (): Promise<ServiceWorkerRegistration | undefined> =>
  navigator.serviceWorker.getRegistration(WORKER).catch(() => undefined);

/** A newer version on the phone, waiting for the running one to end. */
export const waitingWorker = (registration?: ServiceWorkerRegistration): ServiceWorker | undefined =>
  (registration?.active && registration.waiting) || undefined;
