import { messageSW } from 'workbox-window';

/**
 * Which files of its version a worker has, after it tried to fetch missing ones (worker/kept-files.ts).
 * `no-start`: one that the app needs to start is gone.
 */
export type Kept = 'all' | 'some' | 'no-start';

/** The worker uses the network only for missing files. A version from before this message never answers. */
export const keptBy = (worker: ServiceWorker): Promise<Kept> => messageSW(worker, { type: 'WHAT_IS_KEPT' });
