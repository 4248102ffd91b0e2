// The page with somebody else's spreadsheet, which does what the app does at a start: its rows are read from a
// database, and a worker has kept it for no signal. It is bundled by `spreadsheet.ts`.
import { Workbook } from '@fortune-sheet/react';
import '@fortune-sheet/react/dist/index.css';
import { createElement } from 'react';
import { createRoot } from 'react-dom/client';

navigator.serviceWorker.register('/sw.js');

const settled = (request, event = 'success') =>
  new Promise((done, refuse) => {
    request.addEventListener(event, () => done(request.result));
    request.addEventListener('error', () => refuse(request.error));
  });

const opening = indexedDB.open('sheet', 1);
opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore('rows'));
const database = await settled(opening);
const rows = await settled(database.transaction('rows').objectStore('rows').getAll());

window.keepRows = (given) => {
  const tx = database.transaction('rows', 'readwrite');
  for (const [at, row] of given.entries()) tx.objectStore('rows').put(row, at);
  return settled(tx, 'complete');
};

const celldata = rows.flatMap((row, r) => row.map((v, c) => ({ r, c, v: { v, m: v } })));
const sheet = { name: 'Day', row: rows.length, column: rows[0]?.length ?? 1, celldata };
let workbook;
window.cells = () => workbook.getAllSheets()[0].data.map((row) => row.map((cell) => cell?.v ?? ''));
const ref = (it) => {
  workbook = it;
};
createRoot(document.getElementById('app')).render(createElement(Workbook, { ref, data: [sheet] }));
