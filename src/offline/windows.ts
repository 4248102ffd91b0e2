// Every window holds one shared lock while it lives, so windows can be counted without asking the worker. A
// frozen or hidden window counts too: it would come back with its old code.
const NAME = 'rollbook-window';
const PATIENCE_MS = 250;

/** Holds this window's lock until it closes; resolves when it is held, or after `patienceMs` without it. */
export async function holdWindow(patienceMs: number): Promise<void> {
  if (!navigator.locks) return;
  const held = new Promise<void>((done) => {
    void navigator.locks
      .request(NAME, { mode: 'shared' }, () => {
        done();
        return new Promise<never>(() => undefined);
      })
      .catch(() => done());
  });
  await Promise.race([held, sleep(patienceMs)]);
}

/** Runs the work while no other window is open and none can start; false if it did not run. */
export async function whileOnlyWindow(work: () => Promise<void>): Promise<boolean> {
  if (!navigator.locks) return false;
  let ran = false;
  try {
    // After a reload the old page's lock may live on for a moment.
    await navigator.locks.request(NAME, { signal: AbortSignal.timeout(PATIENCE_MS) }, async () => {
      ran = true;
      await work();
    });
  } catch (error) {
    if (ran) throw error;
  }
  return ran;
}

export async function isAnotherWindowOpen(): Promise<boolean> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return held.filter(({ name }) => name === NAME).length > 1;
}

export const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Resolves when the page and its resources have loaded. */
export const loaded = (): Promise<unknown> =>
  document.readyState === 'complete'
    ? Promise.resolve()
    : new Promise((done) => window.addEventListener('load', done, { once: true }));
