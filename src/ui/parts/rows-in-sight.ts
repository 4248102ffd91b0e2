import { useEffect, useState } from 'preact/hooks';

/** The least height of a row, and where the style changes to two columns and to a phone on its side. */
const ROW_PX = 48;
const TWO_COLUMNS_PX = 700;
const ON_ITS_SIDE_PX = 480;

/** The least that head, foot and what is above a list take of the screen. */
const aroundPx = (): number => (innerHeight < ON_ITS_SIDE_PX ? 100 : 200);

/**
 * How many rows of a list of so many to draw: at first those in sight at least, so that no screen waits for the others,
 * then twice as many with every picture, so that no tap does.
 */
export function useRowsInSight(all: number): number {
  const [rows, setRows] = useState(
    () => Math.ceil((innerHeight - aroundPx()) / ROW_PX) * (innerWidth < TWO_COLUMNS_PX ? 1 : 2),
  );
  useEffect(() => {
    if (rows < all) setRows(2 * rows);
  }, [rows, all]);
  return rows;
}
