import { messageSW } from 'workbox-window';

/**
 * What a worker has of its version's files, after it tried to fetch what was missing (worker/kept-files.ts). `no-start`: one
 * is gone that the app cannot start without.
 */
export type Kept = 'all' | 'some' | 'no-start';

/** Asks a worker, which asks the network only where something is missing. A version from before this answers never. */
export const keptBy = (worker: ServiceWorker): Promise<Kept> => messageSW(worker, { type: 'WHAT_IS_KEPT' });
