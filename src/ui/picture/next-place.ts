import type { DayPicture } from '../../report/printed/day-picture.ts';

/** A button of the picture: a take in the header (`row` is -1), or a band of a row. */
export interface PicturePlace {
  readonly row: number;
  readonly at: number;
}

/** Where an arrow key leads: along the row, or to whatever is above or below the start of this one. */
export function nextPlace(picture: DayPicture, place: PicturePlace, key: string): PicturePlace | undefined {
  const along = lengthOf(picture, place.row) - 1;
  switch (key) {
    case 'ArrowRight':
      return { ...place, at: Math.min(along, place.at + 1) };
    case 'ArrowLeft':
      return { ...place, at: Math.max(0, place.at - 1) };
    case 'Home':
      return { ...place, at: 0 };
    case 'End':
      return { ...place, at: along };
    case 'ArrowDown':
      return across(picture, place, Math.min(picture.rows.length - 1, place.row + 1));
    case 'ArrowUp':
      return across(picture, place, Math.max(-1, place.row - 1));
    default:
      return undefined;
  }
}

const lengthOf = ({ columns, rows }: DayPicture, row: number): number =>
  row < 0 ? columns.length : (rows[row]?.bands.length ?? 0);

function across(picture: DayPicture, place: PicturePlace, row: number): PicturePlace {
  if (row === place.row) return place;
  const column = place.row < 0 ? place.at : (picture.rows[place.row]?.bands[place.at]?.from ?? 0);
  if (row < 0) return { row, at: column };
  const bands = picture.rows[row]?.bands ?? [];
  // The band below; in a gap the next one, at the end the last.
  const found = bands.findIndex(({ to }) => to >= column);
  return { row, at: found < 0 ? Math.max(0, bands.length - 1) : found };
}
