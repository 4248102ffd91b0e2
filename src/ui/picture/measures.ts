import type { PictureBand, PictureColumn } from '../../report/printed/day-picture.ts';

// In drawing units: 16 of them are one rem, so the picture grows with the phone's text size.
export const GUTTER = 44;
export const ROW = 48;
export const BAND = 30;
/** Width of a letter, rather too much than too little: names must not run out of their bands. */
export const LETTER = 7.8;
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

/** The length of a take's name with the ring that a circled one has. */
export const takeLength = ({ text }: Pick<PictureColumn, 'text'>): number => text.length * LETTER + 14;

/** A name too long for its column is set vertically. */
export const isTurned = (take: Pick<PictureColumn, 'text'>, column: number): boolean =>
  takeLength(take) > column;

const LEAST_HEAD = 48;

/** The height of the row of take names: a finger's, or that of the longest name set vertically. */
export const headHeight = (takes: readonly Pick<PictureColumn, 'text'>[], column: number): number =>
  Math.max(LEAST_HEAD, ...takes.map((take) => (isTurned(take, column) ? takeLength(take) + 8 : 0)));

const LABEL_EDGES = 14;

/** How far the name of a band can move along inside it: it stays in sight while the band is scrolled past. */
export const labelRoom = (band: PictureBand, column: number): number =>
  Math.max(0, bandWidth(band, column) - bandLabel(band, column).length * LETTER - LABEL_EDGES);
