import type { DayId } from '../../facts/kinds/envelope.ts';
import type { AppStore } from '../app-store.ts';
import type { DayStore } from '../day-store.ts';
import type { KeyRing } from '../key-ring.ts';
import type { Shelf } from '../shelf.ts';
import { BatchBook } from './book.ts';
import { dayFacts } from './day-facts.ts';
import { keepLive, type LiveDay } from './live-day.ts';
import { type LiveState, tellLive } from './live-state.ts';
import type { LogPlace, OpenLog } from './log.ts';
import { platformParts } from './platform-parts.ts';
import { forgetRefusals } from './refusals.ts';
import { renewKey } from './renew-key.ts';
import { sealedSealer } from './sealed-sealer.ts';

/** What live days need of the platform; loaded only where a day is live. */
export interface LiveEngine {
  readonly openLog: OpenLog;
  readonly shelf: Shelf;
  readonly ring: KeyRing;
}

/** The day that is being kept in step, if any. */
let stopNow: (() => Promise<void>) | undefined;

/** Keeps the open day in step from here on; another window of this phone that does so already goes on doing it. */
export async function startLive(app: AppStore, engine: LiveEngine, day: DayId): Promise<void> {
  await stopLive();
  const place = app.parts.live?.places.of(day);
  const store = app.current();
  if (!place || store?.day.peek().id !== day) return;
  const over = new AbortController();
  const tell = toldToWindows(app, day, over.signal);
  const running = withLock(lockOf(day), over.signal, () => run(app, engine, store, place, over.signal, tell));
  stopNow = async () => {
    over.abort();
    await running.catch(() => {});
  };
}

export async function stopLive(): Promise<void> {
  const stop = stopNow;
  stopNow = undefined;
  tellLive(null);
  await stop?.();
}

async function run(
  app: AppStore,
  engine: LiveEngine,
  store: DayStore,
  place: LogPlace,
  over: AbortSignal,
  tell: typeof tellLive,
): Promise<void> {
  const book = await BatchBook.open(engine.shelf, store.day.peek().id);
  const held = await engine.ring.read(store.day.peek().id);
  if (!held || over.aborted) return;
  forgetRefusals();
  const { database } = app.parts.journal.state;
  const sealer = await sealedSealer(platformParts, held, store, database, book);
  const { openLog } = engine;
  const onKeyTwice = (from: number): void => {
    const { ring, shelf } = engine;
    void renewKey(platformParts, ring, shelf, store, from, stopLive).then((isNew) =>
      isNew ? app.parts.live?.start(store.day.peek().id) : undefined,
    );
  };
  const facts = dayFacts(app, store);
  const live = keepLive({ openLog, place, sealer, book, facts, tell, onKeyTwice });
  const stopHearing = hearNetwork(live);
  await new Promise((done) => over.addEventListener('abort', done));
  stopHearing();
  await live.close();
}

const ASKED = 'asked';
const LEFT = 'left';

/**
 * Says how the day stands, here and in the other windows of this phone: only one of them keeps it in step. What ends late
 * says nothing of the day that is open by then. A day that was left in one window is left in all.
 */
function toldToWindows(app: AppStore, day: DayId, over: AbortSignal): typeof tellLive {
  const windows = new BroadcastChannel(`rollbook-live-${day}`);
  let own: LiveState | undefined;
  const hear = ({ data }: MessageEvent<LiveState | typeof ASKED | typeof LEFT>): void => {
    if (data === LEFT) {
      app.parts.live?.places.keep(day, undefined);
      app.parts.live?.stop();
    } else if (data !== ASKED && !own) tellLive(data);
    else if (data === ASKED && own) windows.postMessage(own);
  };
  windows.addEventListener('message', hear);
  windows.postMessage(ASKED);
  over.addEventListener('abort', () => {
    windows.removeEventListener('message', hear);
    if (!app.parts.live?.places.of(day)) windows.postMessage(LEFT);
    windows.close();
  });
  return (state) => {
    if (over.aborted || !state) return;
    own = state;
    windows.postMessage(state);
    tellLive(state);
  };
}

/** Held by whoever writes batches of the day: two windows would write two under one number. */
export const lockOf = (day: DayId): string => `rollbook-live-${day}`;

const withLock = (name: string, signal: AbortSignal, work: () => Promise<void>): Promise<void> =>
  // Missing without a secure origin, as what seals is.
  navigator.locks.request(name, { signal }, work);

/** The moments in which a network is likely to be there again. */
function hearNetwork(live: LiveDay): () => void {
  const retry = (): void => {
    if (!document.hidden) live.retry();
  };
  addEventListener('online', retry);
  document.addEventListener('visibilitychange', retry);
  return () => {
    removeEventListener('online', retry);
    document.removeEventListener('visibilitychange', retry);
  };
}
