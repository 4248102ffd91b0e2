import { messageSW } from 'workbox-window';
import { fail, ok, type Result } from '../shared/result.ts';
import { keepRegistered } from './keep-registered.ts';
import { keptBy } from './kept-files.ts';
import { readRegistration, waitingWorker } from './registration.ts';
import { reloadOnce, wasReloaded } from './reload-once.ts';
import type { RestartRefusal, UpdateEvents, UpdateState, UpdateWatcher } from './update-watcher.ts';
import { holdWindow, isAnotherWindowOpen, loaded, sleep, whileOnlyWindow } from './windows.ts';

const PATIENCE_MS = 1_500;
const ANSWER_WITHIN_MS = 3_000;
// Chromium delays a new worker for minutes when the old one is asked for a file during the change
// (w3c/ServiceWorker issue 1295). Measured: 1 change of 3 delayed without a pause, 0 of 160 after 100 ms.
const QUIET_MS = 150;

const never = (): Promise<never> => new Promise(() => undefined);
const refuse = (because: RestartRefusal['because']): Result<never, RestartRefusal> =>
  fail({ code: 'restart-refused', because });

/** Watches this window's worker; without one (no secure context, or development) it only reports that. */
export function createUpdateWatcher(events: UpdateEvents): UpdateWatcher {
  const told = tellChangesOnly(events);
  // Not prevented: the import must also fail for its caller, who knows what was wanted.
  window.addEventListener('vite:preloadError', () => {
    void isOnPhone().then(events.onPartMissing);
  });
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return withoutWorker(told);

  let isReloading = false;
  // Before the first render nothing can be lost, so a new version may reload the page.
  let onNewVersion = (): void => {
    if (!wasReloaded() && !isReloading) isReloading = reloadOnce();
  };
  watchController(() => onNewVersion());

  return {
    takeWaiting: async () => {
      await startWaitingVersion();
      if (!isReloading) await holdWindow(PATIENCE_MS);
      if (isReloading) await never();
      onNewVersion = () => told.onUpdate('stale');
    },
    start: () => {
      // Clears the guard now; most starts do not need the answer, and a slow phone takes its time over it.
      wasReloaded();
      return keepRegistered({
        onOffline: told.onOffline,
        onWaiting: (isWaiting) => told.onUpdate(isWaiting ? 'waiting' : 'current'),
      });
    },
    restartIntoUpdate: () => restart(told),
  };
}

/** Activates a waiting version if this is the only window and was not just reloaded. */
async function startWaitingVersion(): Promise<void> {
  const waiting = waitingWorker(await readRegistration());
  if (!waiting || wasReloaded()) return;
  await whileOnlyWindow(async () => {
    const [isWhole] = await Promise.all([hasAll(waiting), Promise.race([loaded(), sleep(PATIENCE_MS)])]);
    // Activating it would drop the running version's files and leave one that cannot start.
    if (isWhole) await putInCharge(waiting);
  });
}

/** Whether a worker confirms in time that it has every file of its version. */
const hasAll = (worker: ServiceWorker): Promise<boolean> =>
  Promise.race([keptBy(worker).then((kept) => kept === 'all'), sleep(ANSWER_WITHIN_MS).then(() => false)]);

/** Whether reopening the app would find every part of the version now in charge. */
async function isOnPhone(): Promise<boolean> {
  const active = 'serviceWorker' in navigator && (await readRegistration())?.active;
  return active ? hasAll(active) : false;
}

/** Resolves when the worker has taken over, or after a while if the browser delays it. */
async function putInCharge(waiting: ServiceWorker): Promise<void> {
  const inCharge = new Promise((done) =>
    navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }),
  );
  await sleep(QUIET_MS);
  // It takes over without answering.
  void messageSW(waiting, { type: 'SKIP_WAITING' });
  await Promise.race([inCharge, sleep(PATIENCE_MS)]);
}

interface Told extends UpdateEvents {
  readonly state: () => UpdateState;
}

async function restart(told: Told): Promise<Result<'restarting', RestartRefusal>> {
  const busy = told.busyWith();
  if (busy) return refuse(busy);
  if (told.state() !== 'stale') {
    const waiting = waitingWorker(await readRegistration());
    if (!waiting) return refuse('no-update');
    // The other window would lose the parts that it has not loaded yet.
    if (await isAnotherWindowOpen()) return refuse('other-window');
    if (!(await hasAll(waiting))) return refuse('not-whole');
    // If it is delayed, the reloaded page tries again before rendering.
    await putInCharge(waiting);
  }
  // A take may have started meanwhile: then this window goes on and restarts later.
  const busyNow = told.busyWith();
  if (busyNow) return refuse(busyNow);
  location.reload();
  return ok('restarting');
}

/** Calls back when another worker takes over; a page's very first worker does not count. */
function watchController(onChange: () => void): void {
  const container = navigator.serviceWorker;
  let before = container.controller;
  container.addEventListener('controllerchange', () => {
    const isTakeover = before !== null && container.controller !== before;
    before = container.controller;
    if (isTakeover) onChange();
  });
}

/** Reports changes only, and keeps `stale` until a reload clears it. */
function tellChangesOnly(events: UpdateEvents): Told {
  let update: UpdateState = 'current';
  let offline = '';
  return {
    ...events,
    state: () => update,
    onUpdate: (state) => {
      if (state === update || update === 'stale') return;
      update = state;
      events.onUpdate(state);
    },
    onOffline: (state) => {
      if (state === offline) return;
      offline = state;
      events.onOffline(state);
    },
  };
}

const withoutWorker = (events: UpdateEvents): UpdateWatcher => ({
  takeWaiting: async () => undefined,
  start: async () => {
    events.onOffline('unsupported');
    return true;
  },
  restartIntoUpdate: async () => refuse('no-update'),
});
