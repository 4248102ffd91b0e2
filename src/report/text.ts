import type { Extras } from './extras.ts';
import type { ReportModel } from './model.ts';
import { textBlocks } from './text-blocks.ts';

/** The whole report as plain text of at most 72 columns, lines ending in LF, for a mail body or a file. */
export const reportText = (model: ReportModel, extras: Extras = {}): string =>
  `${textBlocks(model, extras)
    .flatMap(({ lines }) => lines)
    .join('\n')}\n`;
