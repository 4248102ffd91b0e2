import type { AppStore } from './app/app-store.ts';
import { startLive, stopLive } from './app/live/go-live.ts';
import type { DayId } from './facts/kinds/envelope.ts';
import { openLog } from './live/log.ts';
import { idbShelf } from './storage/idb-shelf.ts';

// What live days are made of, composed apart from `main.tsx`: most days never need it.

export const shelf = idbShelf();
export const { ring } = shelf;

export const start = (app: AppStore, day: DayId): Promise<void> =>
  startLive(app, { shelf, ring, openLog: openLog.bind(null, location.href) }, day);

export const stop = stopLive;
