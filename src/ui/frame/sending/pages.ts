import type { Result } from '../../../shared/result.ts';
import { notMade, type Pages, type PagesAsked, type PagesProblem } from './pages-asked.ts';

/**
 * Sets pages on a thread of their own, which ends with them, or when `stop` says that nobody wants them any more: on a
 * slow phone they take a second, in which a tap must answer, and the writer keeps some 35 MB for a long report.
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
