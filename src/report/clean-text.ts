/** Controls that turn the direction of later text, even on other lines; plain RTL marks stay. */
const DIRECTION_ORDERS = /[\u202a-\u202e\u2066-\u2069]/g;
const INVISIBLE = /[\u0000-\u0008\u000e-\u001f\u007f-\u009f\ufeff\ufff9-\ufffb\ufffe\uffff\p{Cs}]/gu;

/** Fast path: most text is clean already, and every name passes here for every chain. */
const CLEAN_LINE = /^(?:[!-~\u00a1-\u024f](?: ?[!-~\u00a1-\u024f])*)?$/;

/** Typed text as one line that cannot affect its neighbours: no control characters, no line breaks. */
export const cleanLine = (text: string): string =>
  CLEAN_LINE.test(text) ? text : cleanNote(text).replaceAll(/\s+/g, ' ').trim();

/** The same for text of several lines, with line breaks as LF. */
export const cleanNote = (text: string): string =>
  text
    .replaceAll(/\r\n?|[\u0085\u2028\u2029\u000b\u000c]/g, '\n')
    .replaceAll('\t', ' ')
    .replaceAll(DIRECTION_ORDERS, '')
    .replaceAll(INVISIBLE, '')
    .replaceAll(/[ ]+$/gm, '')
    .replaceAll(/\n{3,}/g, '\n\n')
    .trim();
