import type { OnlyCopied } from '../app/restore.ts';
import type { DayId } from '../facts/kinds/envelope.ts';

/** Ids may hold characters that file names may not; and a file name may not be two dots. */
export const folderOf = (day: DayId): string => `d-${encodeURIComponent(day)}`;
export const dayOf = (folder: string): DayId => decodeURIComponent(folder.slice(2));

/** What a window asks of the worker that writes the copies; answered in order. */
export type Asked =
  | { readonly to: 'keep'; readonly folder: string; readonly file: string; readonly line: string }
  | { readonly to: 'align' | 'forget'; readonly folder: string };
export interface Answered {
  readonly done: boolean;
  /** After reconciling: what the copies have of the day and the database does not. */
  readonly onlyCopied: OnlyCopied;
}

export const NOTHING_COPIED: OnlyCopied = { whole: [], unchecked: [], damaged: 0 };
