import { join, resolve } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { openBrowser } from './harness-browsers.ts';
import { borrowServer, giveBackServer, startServer } from './harness-server.ts';
import { createWitness, startTrap } from './harness-witness.ts';

const SHOTS = resolve(import.meta.dirname, '../../.shots');
const READY = 'main, #app > *';
const REST_MS = 2000;
/** More than the bars of any browser around its page. */
const WINDOW_FRAME = 200;

export interface StageOptions {
  /** CSS pixels; 390 x 844 unless told. */
  readonly viewport?: { readonly width: number; readonly height: number };
  /** Dark unless told. */
  readonly colorScheme?: 'light' | 'dark';
  /** True unless told: a touch screen and a phone's viewport. */
  readonly phone?: boolean;
  /** An ISO instant at which `Date` stands still; timers keep running. */
  readonly clock?: string;
  /** IANA zone of the phone; Europe/Berlin unless told. */
  readonly timezone?: string;
  /** How many times slower the processor is. */
  readonly slowdown?: number;
  /**
   * Installs the service worker, for what happens without a signal or with a new version. It fetches a hundred files,
   * which is most of the work of opening a stage; without this, its registration is under way for as long as the stage
   * is open, as in the first seconds on a slow phone.
   */
  readonly worker?: boolean;
  /** Runs in every page before its own scripts: for what this browser lacks, such as a share sheet. */
  readonly before?: () => void;
  /**
   * A browser that is not shared with the other stages of its process and has a profile on disk: for what ends it, and for
   * what only a disk does. The options `profileIn`, `untouched`, `fineClock`, `hears` and `camera` mean one too.
   */
  readonly ownBrowser?: boolean;
  /** The file, .mjpeg, that the camera shows; it need not be there before the camera is asked for. */
  readonly camera?: string;
  /** Where the browser keeps its profile; the system's folder for such things unless told. */
  readonly profileIn?: string;
  /** Faults that the test provokes on purpose and that may come at any moment. */
  readonly forgives?: RegExp;
  /** The folder to serve; dist unless told. */
  readonly folder?: string;
  /** Where it opens, after every launch; `/` unless told. */
  readonly path?: string;
  /**
   * For measuring: the page is asked for when the browser has come to rest after its own start, in a window that shows
   * all of it, and nothing is asked of it meanwhile. On a slow processor every look at it is time that it does not have.
   */
  readonly untouched?: boolean;
  /** A recording that the browser plays to whoever opens the microphone, from its start, in a loop; nobody is asked. */
  readonly hears?: string;
  /** The port of a log server's WebSocket, which the app finds under `/live`. */
  readonly live?: number;
  /** For measuring what takes a ms: the page's clock counts in µs, and not in tenths of a ms. */
  readonly fineClock?: boolean;
}

/** The real built app, served by a real server, in a real browser where it finds nothing kept. */
export interface Stage {
  readonly origin: string;
  /** The first window; another object after a relaunch. */
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  readonly faults: readonly string[];
  /** Takes out, and returns, faults that the test provoked on purpose. */
  readonly forgive: (pattern: RegExp) => readonly string[];
  /** No signal: the server process is dead from here on. Needs `worker`, and so do the next two and `waitOfflineReady`. */
  readonly killServer: () => Promise<void>;
  /** The same, once the app is ready for it. */
  readonly loseSignal: () => Promise<void>;
  /** Signal again, perhaps with another build. */
  readonly startServer: (folder?: string) => Promise<void>;
  /** Loads the page anew and waits until the app shows something. */
  readonly reload: () => Promise<void>;
  /** Closes the browser and opens it again on the same profile, as after a night in the drawer. Needs `ownBrowser`. */
  readonly relaunch: () => Promise<void>;
  /** Stops every process of the browser where it stands. Needs `ownBrowser`. */
  readonly freeze: () => void;
  /** Kills every process of the browser at once, as a phone that falls does; `relaunch` starts it. Needs `ownBrowser`. */
  readonly crash: () => Promise<void>;
  /**
   * Removes the files of the browser's databases, as a browser does that finds them damaged. Not while it runs. Needs
   * `ownBrowser`.
   */
  readonly loseDatabase: () => void;
  /** A second window of the same profile, ready to use. */
  readonly openWindow: (path?: string) => Promise<Page>;
  /** Resolves when the service worker is installed, active and in charge of the page. */
  readonly waitOfflineReady: (page?: Page) => Promise<void>;
  /** Resolves when nothing on the screen is unsaved: an element says `data-unsaved="0"`. */
  readonly waitSaved: (page?: Page) => Promise<void>;
  /** Lets time pass, for the date of the option `clock` and for the counter that nobody can set. */
  readonly setClock: (iso: string) => Promise<void>;
  /** Sets the phone's clock by hand: only the date changes, whatever time has passed. */
  readonly turnClock: (iso: string) => Promise<void>;
  readonly setSlowdown: (times: number) => Promise<void>;
  /** Writes `.shots/<name>.png` and returns its path. */
  readonly screenshot: (name: string) => Promise<string>;
  /** Ends everything, then throws if there were faults that nobody forgave. */
  readonly close: () => Promise<void>;
}

/** Opens the app and waits until it shows something. Close it again in the test's `finally` or `afterEach`. */
export async function openStage(options: StageOptions = {}): Promise<Stage> {
  const isPlain = !options.folder && !options.fineClock && options.live === undefined;
  const server = await (isPlain
    ? borrowServer()
    : startServer(options.folder, options.fineClock, options.live));
  const witness = createWitness(server.origin);
  const trap = await startTrap(witness.report);
  const browser = openBrowser(trap.port, options);
  let { clock, slowdown = 1 } = options;
  let context: BrowserContext;
  let page: Page;

  const slow = async (target: Page): Promise<void> => {
    const session = await context.newCDPSession(target);
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  };
  const show = async (target: Page, path: string): Promise<void> => {
    if (slowdown !== 1) await slow(target);
    await target.goto(new URL(path, server.origin).href);
    if (!options.untouched) await waitReady(target);
  };
  const launch = async (): Promise<void> => {
    context = await browser.open();
    context.setDefaultTimeout(20_000);
    witness.watch(context);
    // Before the scripts below, which are for the app's pages and not for the empty one that it begins with.
    page = context.pages()[0] ?? (await context.newPage());
    if (clock) {
      await context.clock.setFixedTime(clock);
      await context.addInitScript(holdCounter);
    }
    if (!options.worker) await context.addInitScript(registerForever);
    if (options.before) await context.addInitScript(options.before);
    if (options.untouched) {
      await showWhole(page);
      await page.waitForTimeout(REST_MS);
    }
    await show(page, options.path ?? '/');
  };
  const setClock = async (iso: string): Promise<void> => {
    clock = iso;
    await context.clock.setFixedTime(iso);
  };
  const needWorker = (): void => {
    if (!options.worker) throw new Error('This stage has no service worker; open it with `worker: true`.');
  };
  const end = async (): Promise<void> => {
    await context?.close();
    await (isPlain ? giveBackServer(server) : server.kill());
    await trap.close();
    browser.remove();
  };

  try {
    await launch();
  } catch (error) {
    await end();
    throw new Error(`The app did not open. ${witness.faults.join('\n')}`, { cause: error });
  }

  return {
    origin: server.origin,
    get page() {
      return page;
    },
    get context() {
      return context;
    },
    requests: witness.requests,
    faults: witness.faults,
    forgive: witness.forgive,
    killServer: async () => {
      needWorker();
      await server.kill();
    },
    loseSignal: async () => {
      needWorker();
      await waitOfflineReady(page);
      await server.kill();
    },
    startServer: async (folder) => {
      needWorker();
      await server.start(folder);
    },
    reload: async () => {
      await page.reload();
      await (options.untouched ? waitReadyUntouched : waitReady)(page);
    },
    relaunch: async () => {
      browser.mustBeOwn();
      await context.close();
      await launch();
    },
    freeze: () => browser.signal('SIGSTOP'),
    crash: async () => {
      const gone = new Promise<void>((done) => context.once('close', () => done()));
      browser.signal('SIGKILL');
      await gone;
    },
    loseDatabase: browser.loseDatabase,
    openWindow: async (path = '/') => {
      const opened = await context.newPage();
      await show(opened, path);
      return opened;
    },
    waitOfflineReady: async (target = page) => {
      needWorker();
      await waitOfflineReady(target);
    },
    waitSaved: (target = page) => target.locator('[data-unsaved="0"]').first().waitFor({ state: 'attached' }),
    setClock,
    turnClock: async (iso) => {
      for (const target of context.pages())
        await target.evaluate((atMs) => globalThis.clockTurns(atMs), Date.parse(iso));
      await setClock(iso);
      // A date that is set again before the counter was read once would leave nothing of the turn.
      for (const target of context.pages()) await target.evaluate(() => void performance.now());
    },
    setSlowdown: async (times) => {
      slowdown = times;
      for (const target of context.pages()) await slow(target);
    },
    screenshot: async (name) => {
      const path = join(SHOTS, `${name}.png`);
      await page.screenshot({ path, animations: 'disabled' });
      return path;
    },
    close: async () => {
      await end();
      if (options.forgives) witness.forgive(options.forgives);
      if (witness.faults.length > 0) throw new Error(`Faults in the browser:\n${witness.faults.join('\n')}`);
    },
  };
}

/** Opens a stage for one piece of work and closes it whatever happens; faults nobody forgave fail the test. */
export async function onStage(options: StageOptions, work: (stage: Stage) => Promise<void>): Promise<void> {
  const stage = await openStage(options);
  try {
    await work(stage);
  } catch (error) {
    // The work's own error says more than the faults, which are often its echo.
    const faults = [...stage.faults];
    await stage.close().catch(() => undefined);
    if (faults.length > 0 && error instanceof Error) error.message += `\nFaults seen:\n${faults.join('\n')}`;
    throw error;
  }
  await stage.close();
}

/**
 * Makes the window larger than the picture of the phone, which has more pixels than the window otherwise. What changes
 * outside the window is not presented before something inside it is, and a tap there would be counted with that.
 */
async function showWhole(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const { windowId } = await session.send('Browser.getWindowForTarget');
  const pixels = await page.evaluate(() => [innerWidth, innerHeight].map((size) => size * devicePixelRatio));
  const [width, height] = pixels.map((size) => size + WINDOW_FRAME);
  await session.send('Browser.setWindowBounds', { windowId, bounds: { width: width!, height: height! } });
  await session.detach();
}

declare global {
  var clockTurns: (atMs: number) => void;
}

/**
 * Where a test holds the date, the counter that nobody can set goes with it: otherwise the date would seem to be set
 * back all the time. Only when the date is turned by hand, the counter stays, from the moment in which the date is new.
 */
function holdCounter(): void {
  let start: number | undefined;
  let turned = 0;
  let coming: { readonly atMs: number; readonly ms: number } | undefined;
  const counter = (): number => {
    const now = Date.now();
    start ??= now;
    if (coming?.atMs === now) {
      turned += coming.ms;
      coming = undefined;
    }
    return 1000 + now - start - turned;
  };
  Object.defineProperty(performance, 'now', { get: () => counter, set() {}, configurable: true });
  globalThis.clockTurns = (atMs) => {
    coming = { atMs, ms: atMs - Date.now() };
  };
}

/** Leaves the page without a service worker. */
function registerForever(): void {
  if ('ServiceWorkerContainer' in globalThis)
    ServiceWorkerContainer.prototype.register = () => new Promise(() => {});
}

const waitReady = (page: Page): Promise<void> => page.locator(READY).first().waitFor({ state: 'attached' });

/** Without the driver's locators: the first of them leaves listeners for every touch in the page, and taps are measured. */
const waitReadyUntouched = (page: Page): Promise<void> =>
  page.evaluate(async (wanted) => {
    while (!document.querySelector(wanted)) await new Promise((done) => setTimeout(done, 10));
  }, READY);

async function waitOfflineReady(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    const isReady = (): boolean =>
      active?.state === 'activated' && navigator.serviceWorker.controller !== null;
    await new Promise<void>((done) => {
      const look = (): void => (isReady() ? done() : undefined);
      active?.addEventListener('statechange', look);
      navigator.serviceWorker.addEventListener('controllerchange', look);
      look();
    });
  });
}
