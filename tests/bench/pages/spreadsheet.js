// The page with somebody else's spreadsheet: 200 rows of a day's log. It is bundled by `spreadsheet.ts`.
import { Workbook } from '@fortune-sheet/react';
import '@fortune-sheet/react/dist/index.css';
import { createElement } from 'react';
import { createRoot } from 'react-dom/client';

const ROWS = 200;
const celldata = Array.from({ length: ROWS }, (_, r) =>
  [`${1 + Math.floor(r / 3)}A`, r % 3, '10:00:00:00', '1:30', r % 4 === 0 ? 'circled' : ''].map((v, c) => ({
    r,
    c,
    v: { v, m: String(v) },
  })),
).flat();

createRoot(document.getElementById('app')).render(
  createElement(Workbook, { data: [{ name: 'Day', row: ROWS, column: 10, celldata }] }),
);
