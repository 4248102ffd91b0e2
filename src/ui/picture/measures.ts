import type { PictureBand } from '../../report/printed/day-picture.ts';

// All in units of the drawing: 16 of them are one rem, so the picture grows with the text of the phone.
export const GUTTER = 44;
export const HEAD = 76;
export const ROW = 48;
export const BAND = 30;
/** A letter of a name, about. */
export const LETTER = 7.2;
/** Where a band goes on for longer than this, it says its name again: the beginning may be out of sight. */
const SAID_AGAIN = 260;

export const bandWidth = ({ from, to }: PictureBand, column: number): number => (to - from + 1) * column - 3;

/** As many whole words as fit: what is seen is part of what is said aloud (WCAG 2.2, 2.5.3). */
export function wholeWords(text: string, width: number): string {
  const most = Math.floor((width - 10) / LETTER);
  if (text.length <= most) return text;
  const end = text.lastIndexOf(' ', Math.max(0, most));
  return end <= 0 ? '' : text.slice(0, end).replace(/,$/, '');
}

/** `'Ines'`, `'Tomas, muted'`. */
export const bandWords = ({ name, word }: PictureBand): string => (word ? `${name}, ${word}` : name);

/** What of its words a band can show. */
export const bandLabel = (band: PictureBand, column: number): string =>
  wholeWords(bandWords(band), bandWidth(band, column));

/** Where a band says its name, from its beginning: once where it is short, every so far where it is long. */
export function labelPlaces(band: PictureBand, column: number): number[] {
  const label = bandLabel(band, column);
  if (label === '') return [];
  const long = label.length * LETTER + 14;
  const count = 1 + Math.max(0, Math.floor((bandWidth(band, column) - long) / SAID_AGAIN));
  return Array.from({ length: count }, (_, at) => at * SAID_AGAIN);
}
