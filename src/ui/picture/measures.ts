import type { PictureBand, PictureColumn } from '../../report/printed/day-picture.ts';
import { takeNameParts } from '../../report/printed/take-name.ts';
import { textWidth } from '../../report/printed/text-width.ts';

// In drawing units: 16 of them are one rem, so the picture grows with the phone's text size.
export const GUTTER = 44;
/** The names of takes: slates over numbers, a finger high. */
export const HEAD = 48;
/** Width of a letter, rather too much than too little: names must not run out of their bands. */
export const LETTER = 7.8;
export const NAME_SIZE = 12.5;
export const bandWidth = ({ from, to }: PictureBand, column: number): number => (to - from + 1) * column - 3;

const SHORTEST_ROW = 16;
const TALLEST_ROW = 48;
/** The line at the foot of the drawing. */
export const FOOT = 4;

/** As tall as lets all tracks stand in the room there is: enlarging spreads the takes and keeps the tracks in view. */
export const rowHeight = (room: number, rows: number): number =>
  Math.max(
    SHORTEST_ROW,
    Math.min(TALLEST_ROW, Math.floor(((room - HEAD - FOOT) / Math.max(1, rows)) * 2) / 2),
  );

export const bandHeight = (row: number): number => Math.min(30, row - 3);

/** The size of names in a band: as usual, or as much smaller as the band is lower. */
export const nameSize = (row: number): number => Math.min(NAME_SIZE, bandHeight(row) * 0.86);

/** As many whole words as fit: the visible text must be part of the spoken label (WCAG 2.2, 2.5.3). */
export function wholeWords(text: string, width: number): string {
  const most = Math.floor((width - 10) / LETTER);
  if (textWidth(text) <= most) return text;
  const words = text.split(' ');
  while (words.length > 0 && textWidth(words.join(' ')) > most) words.pop();
  return words.join(' ').replace(/,$/, '');
}

/** `'Ines'`, `'Tomas, muted'`. */
export const bandWords = ({ name, word }: PictureBand): string => (word ? `${name}, ${word}` : name);

export const bandLabel = (band: PictureBand, column: number): string =>
  wholeWords(bandWords(band), bandWidth(band, column));

/** What stands over a column: its take's number, at a size at which it fits with its ring. */
export function takeNumber({ text }: Pick<PictureColumn, 'text'>, column: number) {
  const { number } = takeNameParts(text);
  return {
    number,
    size: Math.min(NAME_SIZE, ((column - 8) * NAME_SIZE) / (Math.max(1, textWidth(number)) * LETTER)),
  };
}

/** A slate over the takes that it has, from the column where it begins; none for a wild track. */
export interface SlateLabel {
  readonly at: number;
  readonly text: string;
  readonly columns: number;
}

export function slateLabels(takes: readonly PictureColumn[]): SlateLabel[] {
  const begins = takes.flatMap(({ startsSetup }, at) => (at === 0 || startsSetup ? [at] : []));
  return begins
    .map((at, place) => ({
      at,
      text: takeNameParts(takes[at]!.text).slate,
      columns: (begins[place + 1] ?? takes.length) - at,
    }))
    .filter(({ text }) => text !== '');
}

const LABEL_EDGES = 14;

/** How far the name of a band can move along inside it: it stays in sight while the band is scrolled past. */
export const labelRoom = (band: PictureBand, column: number): number =>
  Math.max(0, bandWidth(band, column) - textWidth(bandLabel(band, column)) * LETTER - LABEL_EDGES);

/** The same for a slate. */
export const slateRoom = ({ text, columns }: SlateLabel, column: number): number =>
  Math.max(0, columns * column - textWidth(text) * LETTER - LABEL_EDGES);
