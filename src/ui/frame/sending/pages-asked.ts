import type { ReportModel } from '../../../report/model.ts';
import type { PaperId } from '../../../report/pdf/paper.ts';
import type { PrintedSheet } from '../../../report/pdf/sheet-pdf.ts';
import type { Extras } from '../../../report/revision/revision.ts';
import { fail, type Result } from '../../../shared/result.ts';

/** What a window asks of the worker that lays out pages. */
export type PagesAsked = { readonly paper: PaperId } & (
  | ({ readonly what: 'report'; readonly model: ReportModel } & Extras)
  | { readonly what: 'sheet'; readonly sheet: PrintedSheet }
);

export interface Pages {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Characters that nothing here can draw. */
  readonly missing: readonly string[];
}

/** `because` says why there are none: their writer or a font is not on this phone. */
export type PagesProblem = { readonly code: 'pages-not-made'; readonly because: string };

export const notMade = (error: unknown): Result<never, PagesProblem> =>
  fail({ code: 'pages-not-made', because: error instanceof Error ? error.message : String(error) });
