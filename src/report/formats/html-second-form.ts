import { cleanNote } from '../clean-text.ts';
import { escapeHtml } from '../escaped.ts';
import type { ReportModel } from '../model.ts';
import { tracksTitle } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { type PrintedTake, printedTake } from '../printed/printed-take.ts';
import { cautionLines } from '../printed/recorder-words.ts';
import { reportSubject } from '../printed/report-name.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { type Extras, revisionLines, revisionTitle } from '../revision/revision.ts';
import type { TakeLine } from '../take-lines.ts';
import { element, layoutTable, list, pairs, section } from './html-parts.ts';

// The page as the first two forms had it, so that one sent in those comes back byte for byte.

/** The page with its head first, then the tracks, then the takes with all their tracks. */
export function secondFormHtml(model: ReportModel, { revision, signature = '' }: Extras = {}): string {
  const title = revision ? `Sound report, revision ${revision.letter}` : 'Sound report';
  const signed = cleanNote(signature);
  const body = [
    `<header>${element('h1', reportSubject(model) || title)}${element('p', title)}</header>\n`,
    section('Caution', list(cautionLines(model.head), ' class="open"')),
    pairs(headLines(model.head)),
    pairs(totalsLines(model)),
    revision ? section(revisionTitle(revision), list(revisionLines(revision), ' class="open"')) : '',
    section('Not settled', list(model.open.map(matterText), ' class="open"')),
    ...model.lists.map((list) => section(tracksTitle(list), layoutTable(list))),
    section('Takes', takesTable(model)),
    signed ? element('p', signed) : '',
  ].join('');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>${escapeHtml([reportSubject(model), title].filter(Boolean).join(' · '))}</title>
<style>${STYLE}</style>
</head>
<body>
${body}</body>
</html>
`;
}

function takesTable(model: ReportModel): string {
  if (model.takes.length === 0) return '<p>No takes.</p>';
  const rows = model.takes.map((take) => rollRow(take) + takeRows(printedTake(take)));
  const heads = ['Take', 'File', 'Start', 'Length', 'Status'].map((head) => `<th scope="col">${head}</th>`);
  return `<table class="takes"><thead><tr>${heads.join('')}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table>`;
}

const rollRow = ({ rollHeading }: TakeLine): string =>
  rollHeading && `<tr class="roll">${element('th', rollHeading, ' colspan="5" scope="rowgroup"')}</tr>\n`;

function takeRows(take: PrintedTake): string {
  const name = element('th', take.text, take.circled ? ' scope="row" class="circled"' : ' scope="row"');
  const cells = [take.file, take.start, take.length, take.words.join(', ')].map((text) =>
    element('td', text),
  );
  const names = take.names ? element('p', take.names, ' class="names"') : '';
  const also = list(take.also, ' class="on"');
  const tracks = take.lists.map((units) => list(units, ' class="on"')).join('');
  const notes = list(take.notes, ' class="notes"');
  const more =
    names || also || tracks || notes
      ? `\n<tr class="more"><td></td><td colspan="4">${names}${also}${tracks}${notes}</td></tr>`
      : '';
  return `<tr>${name}${cells.join('')}</tr>${more}`;
}

const STYLE = `
:root { color-scheme: light dark; --ink: #1a1814; --soft: #6b655a; --line: #c9c2b2; --paper: #fdfcf7; }
@media (prefers-color-scheme: dark) { :root { --ink: #eae4d6; --soft: #a79f8f; --line: #4a453c; --paper: #14120f; } }
@media print { :root { --ink: #000; --soft: #444; --line: #999; --paper: #fff; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 3rem; max-width: 60rem; color: var(--ink); background: var(--paper);
  font: 15px/1.45 system-ui, sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
header { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: 0 1rem;
  border-bottom: 1.5px solid var(--ink); }
h1 { margin: 0; font-size: 1.8rem; line-height: 1.2; }
h2 { margin: 1.8rem 0 .4rem; font-size: 1.05rem; }
header p { margin: 0; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(9rem, 1fr)); gap: .5rem 1rem; margin: 0;
  padding: .7rem 0; border-bottom: 1px solid var(--line); }
dl .wide { grid-column: 1 / -1; }
dt { color: var(--soft); font-size: .75rem; }
dd { margin: 0; }
ul { margin: 0; padding: 0; list-style: none; }
ul.open { padding-left: .8rem; border-left: 3px solid var(--ink); }
ul.on { display: flex; flex-wrap: wrap; gap: 0 .9rem; font-size: .87rem; }
p.names { margin: 0; font-size: .87rem; }
ul.notes li::before { content: "– "; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: .3rem .5rem .3rem 0; text-align: left; vertical-align: top; font-weight: inherit; }
thead th { color: var(--soft); font-size: .75rem; border-bottom: 1px solid var(--ink); }
tbody th { font-weight: 700; }
.tracks th { width: 3rem; }
.takes tbody tr:not(.more) > * { border-top: 1px solid var(--line); }
.takes tbody th { white-space: nowrap; }
.takes tbody td:nth-child(5) { font-weight: 700; }
.more td { padding-top: 0; }
.circled bdi { padding: .05rem .55rem; border: 2px solid currentColor; border-radius: 50%; }
tr { break-inside: avoid; }
`;
