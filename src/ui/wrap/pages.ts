import type { Extras } from '../../report/extras.ts';
import type { ReportModel } from '../../report/model.ts';
import type { PaperId } from '../../report/pdf/paper.ts';
import type { PrintedSheet } from '../../report/pdf/sheet-pdf.ts';

/** What is to be set in pages. */
export type PagesAsked = { readonly paper: PaperId } & (
  | ({ readonly what: 'report'; readonly model: ReportModel } & Extras)
  | { readonly what: 'sheet'; readonly sheet: PrintedSheet }
);

/** The pages, and the characters their font cannot draw; or why there are none. */
export type PagesMade =
  | { readonly bytes: Uint8Array<ArrayBuffer>; readonly missing: readonly string[] }
  | { readonly because: string };

/**
 * Sets pages on a thread of their own, which ends with them: on a slow phone they take a second, in which a tap must
 * answer, and the writer keeps some 35 MB for a long report. Never rejects.
 */
export function writePages(asked: PagesAsked): Promise<PagesMade> {
  return new Promise((resolve) => {
    try {
      const worker = new Worker(new URL('./pages-worker.ts', import.meta.url), { type: 'module' });
      const end = (made: PagesMade): void => {
        worker.terminate();
        resolve(made);
      };
      worker.addEventListener('message', ({ data }: MessageEvent<PagesMade>) => end(data));
      worker.addEventListener('error', () => end({ because: 'The writer of pages is not on this phone' }));
      worker.postMessage(asked);
    } catch (error) {
      resolve({ because: error instanceof Error ? error.message : String(error) });
    }
  });
}
