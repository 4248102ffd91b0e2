import type { Result } from '../../../shared/result.ts';
import { notMade, type Pages, type PagesAsked, type PagesProblem } from './pages-asked.ts';

/**
 * Lays out pages on a thread of its own, which ends when done or on `stop`: on a slow phone they take a
 * second, during which taps must work, and the writer holds some 35 MB for a long report.
 */
export function writePages(asked: PagesAsked, stop?: AbortSignal): Promise<Result<Pages, PagesProblem>> {
  return new Promise((resolve) => {
    try {
      const worker = new Worker(new URL('./pages-worker.ts', import.meta.url), { type: 'module' });
      const end = (made: Result<Pages, PagesProblem>): void => {
        worker.terminate();
        resolve(made);
      };
      worker.addEventListener('message', ({ data }: MessageEvent<Result<Pages, PagesProblem>>) => end(data));
      worker.addEventListener('error', () => end(notMade('The writer of pages is not on this phone')));
      stop?.addEventListener('abort', () => end(notMade(stop.reason)));
      worker.postMessage(asked);
    } catch (error) {
      resolve(notMade(error));
    }
  });
}
