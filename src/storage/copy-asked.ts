/** The folder of the copies in the origin's private files; in it a folder for each day. */
export const COPIES = 'copies';

/** What a window asks of the worker that writes the copies; answered in the order of asking. */
export type Asked =
  | { readonly to: 'keep'; readonly folder: string; readonly file: string; readonly line: string }
  | { readonly to: 'forget'; readonly folder: string };
export interface Answered {
  readonly done: boolean;
}
