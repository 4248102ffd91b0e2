import type { PictureBand } from '../../report/printed/day-picture.ts';

// In drawing units: 16 of them are one rem, so the picture grows with the phone's text size.
export const GUTTER = 44;
export const HEAD = 76;
export const ROW = 48;
export const BAND = 30;
/** Approximate width of a letter. */
export const LETTER = 7.2;
/** A longer band repeats its name, since its start may be out of sight. */
const SAID_AGAIN = 260;

export const bandWidth = ({ from, to }: PictureBand, column: number): number => (to - from + 1) * column - 3;

/** As many whole words as fit: the visible text must be part of the spoken label (WCAG 2.2, 2.5.3). */
export function wholeWords(text: string, width: number): string {
  const most = Math.floor((width - 10) / LETTER);
  if (text.length <= most) return text;
  const end = text.lastIndexOf(' ', Math.max(0, most));
  return end <= 0 ? '' : text.slice(0, end).replace(/,$/, '');
}

/** `'Ines'`, `'Tomas, muted'`. */
export const bandWords = ({ name, word }: PictureBand): string => (word ? `${name}, ${word}` : name);

export const bandLabel = (band: PictureBand, column: number): string =>
  wholeWords(bandWords(band), bandWidth(band, column));

/** Where along a band its name is written: once on a short one, repeated on a long one. */
export function labelPlaces(band: PictureBand, column: number): number[] {
  const label = bandLabel(band, column);
  if (label === '') return [];
  const long = label.length * LETTER + 14;
  const count = 1 + Math.max(0, Math.floor((bandWidth(band, column) - long) / SAID_AGAIN));
  return Array.from({ length: count }, (_, at) => at * SAID_AGAIN);
}
