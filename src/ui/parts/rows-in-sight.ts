import { useEffect, useState } from 'preact/hooks';

/** The least height of a row, and where the style changes to two columns and to a phone on its side. */
const ROW_PX = 52;
const TWO_COLUMNS_PX = 700;
const ON_ITS_SIDE_PX = 480;

/** The least that head, foot and what is above a list take of the screen. */
const aroundPx = (): number => (innerHeight < ON_ITS_SIDE_PX ? 100 : 230);

/** How many rows of a list belong to the first picture of its screen, which does not wait for the others: at least those in sight. */
export function useRowsInSight(): number {
  const [rows, setRows] = useState(
    () => Math.ceil((innerHeight - aroundPx()) / ROW_PX) * (innerWidth < TWO_COLUMNS_PX ? 1 : 2),
  );
  useEffect(() => setRows(Number.POSITIVE_INFINITY), []);
  return rows;
}
