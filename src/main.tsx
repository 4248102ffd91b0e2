import { render } from 'preact';

import { type AppStore, appStore } from './app/app-store.ts';
import { livePlaces } from './app/live-places.ts';
import type { LivePorts } from './app/live-ports.ts';
import { onlookerDays } from './app/onlooker-days.ts';
import { holderPlace } from './app/phone-holder.ts';
import type { CardStore, Clock, Journal, Neighbours } from './app/ports.ts';
import { safekeeping } from './app/safekeeping.ts';
import { steadyClock } from './app/steady-clock.ts';
import { openTakes } from './day/takes.ts';
import { createUpdateWatcher } from './offline/service-worker.ts';
import type { UpdateWatcher } from './offline/update-watcher.ts';
import type { CopyBeside } from './storage/copy-beside.ts';
import { holdingPlace } from './storage/holding-place.ts';
import { openIdbJournal, randomName } from './storage/idb-journal.ts';
import { withCopy } from './storage/with-copy.ts';
import { followAddress, route } from './ui/frame/route.ts';
import { version } from './ui/frame/version.ts';
import { preloadAll } from './ui/kit/lazy.tsx';
import { chooseLook, look } from './ui/kit/looks.ts';
import { raise } from './ui/kit/messages.ts';
import { App } from './ui/shell/app.tsx';
import { partMissingWords } from './ui/words/part-missing.ts';
import './ui/kit/tokens.css';
import './ui/kit/base.css';
import './ui/frame/page/page.css';
import './ui/kit/kit.css';
import './ui/frame/frame.css';
import './ui/now/now.css';
import './ui/frame/page/dock.css';

/** Whether the page is visible: while hidden the phone may sleep. */
let awake = true;
document.addEventListener('visibilitychange', () => {
  phoneClock.now();
  awake = !document.hidden;
  // The system may end a hidden window without notice.
  if (document.hidden) app?.putAside();
});

addEventListener('pagehide', () => app?.putAside());
addEventListener('beforeunload', (leaving) => {
  if (app && (app.isHolding() || isKeptNowhere(app))) leaving.preventDefault();
});

/** Whether something was entered that no disk has or ever will have. */
const isKeptNowhere = ({ parts, days, current }: AppStore): boolean =>
  !parts.journal.state.kept && (days.peek().length > 0 || (current()?.day.peek().facts.length ?? 0) > 0);

const phoneClock: Clock = steadyClock(
  () => {
    const now = new Date();
    return { dateMs: now.getTime(), zone: -now.getTimezoneOffset(), elapsedMs: performance.now(), awake };
  },
  () => {
    const open = app?.current();
    return open !== undefined && openTakes(open.day.peek()).length > 0;
  },
);

/** Throws in browsers that refuse storage. */
function remembered(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

interface Windows extends Neighbours {
  /** Makes this window read a day again, as if another window had changed it. */
  readonly lookAgain: (day: string) => void;
}

function otherWindows(): Windows {
  const channel = new BroadcastChannel('rollbook');
  return {
    // The screen shows that it is saved first.
    tell: (day) => queueMicrotask(() => channel.postMessage(day)),
    listen(onNews) {
      const hear = ({ data }: MessageEvent): void => onNews(String(data));
      channel.addEventListener('message', hear);
      return () => channel.removeEventListener('message', hear);
    },
    lookAgain: (day) => channel.dispatchEvent(new MessageEvent('message', { data: day })),
  };
}

/** Needed by the card check and by erasing only, so it is not part of the first load. */
const openCards = async (): Promise<CardStore> => (await import('./storage/idb-cards.ts')).idbCards();
const cardsBeside: CardStore = {
  read: async (day) => (await openCards()).read(day),
  keep: async (day, read) => (await openCards()).keep(day, read),
  forget: async (day) => (await openCards()).forget(day),
};

/** Loaded where a day is live, and where one is erased. */
const liveEngine = () => import('./live-engine.ts');
/** The day that is to be kept in step. */
let liveDay: string | undefined;
const live: LivePorts = {
  places: livePlaces(remembered()),
  async start(day) {
    if (!app || !live.places.of(day)) return;
    liveDay = day;
    const engine = await liveEngine();
    if (liveDay === day) await engine.start(app, day);
  },
  stop() {
    if (liveDay === undefined) return;
    liveDay = undefined;
    void liveEngine().then((engine) => engine.stop());
  },
  engine: liveEngine,
  async forget(day) {
    live.places.keep(day, undefined);
    await (await liveEngine()).shelf.forget(day);
  },
};

const neighbours = otherWindows();

/** Before the first screen, errors go on the bare page, and the first screen replaces them. */
function sayThatItWaits(): void {
  const root = document.getElementById('app');
  if (root && !app) {
    render(<p class="problem">The database does not answer. Close the other windows of this app.</p>, root);
  }
}

const ANSWER_WITHIN_MS = 4000;

async function openJournal(): Promise<Journal> {
  const slow = setTimeout(sayThatItWaits, ANSWER_WITHIN_MS);
  try {
    return await openIdbJournal({
      onBlocked: sayThatItWaits,
      onSuperseded() {
        raise('A newer version is open in another window. Reload this window.');
      },
    });
  } catch (error) {
    const isNewer = error instanceof DOMException && error.name === 'VersionError';
    // Rarely needed, so it is not part of the first load.
    const { memoryJournal } = await import('./storage/memory-journal.ts');
    return memoryJournal(randomName(6), isNewer ? 'newer' : 'refused');
  } finally {
    clearTimeout(slow);
  }
}

/** A restart may not interrupt an open take or lose unsaved facts. */
const updates: UpdateWatcher = createUpdateWatcher({
  onUpdate(state) {
    version.value = { ...version.value, update: state };
  },
  onOffline(state) {
    version.value = { ...version.value, offline: state };
  },
  onPartMissing(isOnPhone) {
    raise(partMissingWords(isOnPhone, app?.isHolding() ?? false));
  },
  busyWith() {
    const open = app?.current();
    if (open && openTakes(open.day.peek()).length > 0) return 'open-take';
    return app?.isHolding() ? 'not-saved' : undefined;
  },
});
let app: AppStore | undefined;

async function start(): Promise<void> {
  chooseLook(look.peek());
  followAddress();
  // Reading changes nothing, so it need not wait to learn which version runs.
  const reading = readFirstScreen();
  await updates.takeWaiting();
  app = await reading;
  const root = document.getElementById('app');
  if (root) render(<App app={app} restart={updates.restartIntoUpdate} />, root);
  await idle();
  // A part that fails to load now is requested again when needed.
  updates
    .start()
    .then((isThere) => (isThere ? preloadAll() : undefined))
    .catch(() => {});
  alignCopies?.().catch(() => {});
}

const windowName = randomName(5);

let beside: Promise<CopyBeside> | undefined;
const copies = (): Promise<CopyBeside> => {
  beside ??= import('./storage/copy-beside.ts').then((part) => part.copyBeside(windowName));
  return beside;
};

/** Reconciles the copies and the database, at most so many days. Undefined if there is no database. */
let alignCopies: ((most?: number) => Promise<void>) | undefined;

/** The store, with what its first screen shows: the day in the address, or else the list of days. */
async function readFirstScreen(): Promise<AppStore> {
  const journal = await openJournal();
  const store = appStore({
    journal: journal.state.kept ? withCopy(journal, copies) : journal,
    clock: phoneClock,
    neighbours,
    window: windowName,
    holding: holdingPlace({
      window: windowName,
      storage: remembered(),
      // Missing without a secure origin.
      locks: navigator.locks as LockManager | undefined,
      onOthers: (changed) => addEventListener('storage', changed),
    }),
    holder: holderPlace(remembered()),
    live,
    onlooking: onlookerDays(remembered()),
    cards: journal.state.kept ? cardsBeside : undefined,
    newDayId: () => `d${randomName(12)}`,
    // Missing in old browsers and without a secure origin.
    safekeeping: safekeeping(
      (navigator.storage as StorageManager | undefined)?.persist && navigator.storage,
      remembered(),
    ),
  });
  if (journal.state.kept)
    alignCopies = async (most) => {
      const [part, kept] = await Promise.all([import('./ui/days/align-copies.ts'), copies()]);
      await part.alignCopies({ app: store, journal, copies: kept, lookAgain: neighbours.lookAgain }, most);
      // What a copy restored need not be offered, and is on the list of days.
      await Promise.all([store.unsaved.refresh(), store.refreshDays()]);
    };
  // A new database beside existing copies: the browser has lost the old one.
  if (journal.state.begun) await alignCopies?.(1).catch(() => {});
  const where = route.peek();
  if (where.at !== 'day') await store.refreshDays().catch(() => {});
  else {
    // A day that cannot be opened reports it on its screen.
    await store.open(where.day).catch(() => {});
    void store.refreshDays().catch(() => {});
  }
  void store.unsaved.refresh().catch(() => {});
  return store;
}

/** Resolves after the first paint, once the app is idle. */
const idle = (): Promise<void> =>
  new Promise((done) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => done(), { timeout: 2000 });
    else setTimeout(done, 300);
  });

void start();
