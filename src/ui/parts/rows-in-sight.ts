import { useEffect, useState } from 'preact/hooks';

/** The least height of a row, and the least that head, foot and what is above the list take of an upright screen. */
interface ListMeasures {
  readonly rowPx: number;
  readonly aroundPx: number;
}

/** Voices or tracks, and the entries of the line. */
export const ROWS: ListMeasures = { rowPx: 52, aroundPx: 230 };
export const ENTRIES: ListMeasures = { rowPx: 48, aroundPx: 200 };

/** Where the style changes to two columns and to a phone on its side, which has its foot beside the list. */
const TWO_COLUMNS_PX = 700;
const ON_ITS_SIDE_PX = 480;
const AROUND_ON_ITS_SIDE_PX = 100;

function mostInSight({ rowPx, aroundPx }: ListMeasures): number {
  const around = innerHeight < ON_ITS_SIDE_PX ? AROUND_ON_ITS_SIDE_PX : aroundPx;
  return Math.ceil((innerHeight - around) / rowPx) * (innerWidth < TWO_COLUMNS_PX ? 1 : 2);
}

/**
 * How many rows of a list of so many to draw: at first those in sight at least, so that no screen waits for the others,
 * then twice as many with every picture, so that no tap does.
 */
export function useRowsInSight(all: number, measures: ListMeasures): number {
  const [rows, setRows] = useState(() => mostInSight(measures));
  useEffect(() => {
    if (rows < all) setRows(2 * rows);
  }, [rows, all]);
  return rows;
}
