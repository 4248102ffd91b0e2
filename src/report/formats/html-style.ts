import { PICTURE_STYLE } from '../printed/picture-svg.ts';

/** Any text as a CSS string: all but letters and figures by their code, so that nothing typed ends it. */
export const cssText = (text: string): string =>
  `"${Array.from(text, (one) => (/[A-Za-z0-9 ]/.test(one) ? one : `\\${one.codePointAt(0)!.toString(16)} `)).join('')}"`;

/**
 * The look of the HTML report: paper and ink, hairlines, and a printable ring around circled takes. On paper every
 * page has its number and, by `foot`, which report it is of, where the browser sets margins.
 */
export const pageStyle = (foot: string): string => `
:root { color-scheme: light dark; --ink: #1a1814; --soft: #6b655a; --line: #c9c2b2; --band: #ebe6d8; --paper: #fdfcf7; }
@media (prefers-color-scheme: dark) { :root { --ink: #eae4d6; --soft: #a79f8f; --line: #4a453c; --band: #37322a; --paper: #14120f; } }
@media print { :root { --ink: #000; --soft: #444; --line: #999; --band: #e6e6e6; --paper: #fff; } }
@page { margin: 14mm 12mm 18mm; @bottom-left { content: ${cssText(foot)}; font: 8pt sans-serif; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: .8rem .75rem 3rem; max-width: 60rem; color: var(--ink); background: var(--paper);
  font: 15px/1.4 system-ui, sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: break-word; }
header { border-bottom: 1.5px solid var(--ink); padding-bottom: .4rem; }
h1 { margin: 0; font-size: 1.4rem; line-height: 1.2; }
h2 { margin: 1.4rem 0 .3rem; font-size: 1.05rem; break-after: avoid; }
header p { margin: 0; }
.brief { color: var(--soft); font-size: .87rem; }
header + section h2 { margin-top: .6rem; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(11.5rem, 1fr)); gap: .5rem 1rem; margin: 0;
  padding: .7rem 0; border-bottom: 1px solid var(--line); }
dl > div { min-width: 0; }
dl .wide { grid-column: 1 / -1; }
dt { color: var(--soft); font-size: .75rem; }
dd { margin: 0; }
ul { margin: 0; padding: 0; list-style: none; }
ul.open { padding-left: .8rem; border-left: 3px solid var(--ink); }
ul.on { display: flex; flex-wrap: wrap; gap: 0 .9rem; font-size: .87rem; }
ul.on li { min-width: 0; }
ul.open li + li { margin-top: .2rem; }
ul.on .new { font-weight: 600; }
p.names { margin: 0; font-size: .87rem; }
ul.notes li::before { content: "– "; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: .2rem .5rem .2rem 0; text-align: left; vertical-align: top; font-weight: inherit; }
thead th { color: var(--soft); font-size: .75rem; border-bottom: 1px solid var(--ink); }
tbody th { font-weight: 700; }
.tracks th { width: 3rem; }
.takes tbody tr:not(.more) > * { border-top: 1px solid var(--line); }
.takes tbody th:not(.long) { white-space: nowrap; }
.takes .start, .takes .end, .takes .length { white-space: nowrap; }
.takes td.status { font-weight: 700; }
.takes .unbroken { overflow-wrap: anywhere; }
@media print, (min-width: 52.01rem) { .takes thead .take { width: 6rem; } .takes thead .status { width: 14rem; }
  .takes thead .start, .takes thead .end, .takes thead .length { width: 6.2rem; } }
@media print { .takes thead .status { width: 9rem; } }
.takes .roll th { color: var(--ink); font-size: 1rem; font-weight: 700; border: 0; }
.takes .changed th { box-shadow: inset 3px 0 var(--ink); padding-left: .5rem; }
.takes + .takes .roll th { padding-top: .9rem; }
.more td { padding-top: 0; }
.circled bdi { padding: .05rem .5rem; margin-left: -.5rem; border: 2px solid currentColor; border-radius: 50%; }
.takes .changed .circled bdi { margin-left: 0; }
tr { break-inside: avoid; }
@media print { .takes .file, .takes th { overflow-wrap: anywhere; } }
.more { break-before: avoid; }
.pictures { display: flex; flex-wrap: wrap; gap: 1rem; }
.pictures svg { break-inside: avoid; }
@media screen and (max-width: 52rem) { .takes, .takes thead, .takes tbody { display: block; }
  .takes tr { display: grid; grid-template-columns: 5.4rem repeat(3, minmax(0, 1fr)); padding: .25rem 0; }
  .takes tbody tr:not(.more) { border-top: 1px solid var(--line); }
  .takes tbody tr:not(.more) > * { border-top: 0; }
  .takes th, .takes td { padding: 0; }
  .takes thead tr { padding: 0; border-bottom: 1px solid var(--ink); }
  .takes thead th { border: 0; }
  .takes .take { grid-row: 1 / span 2; padding-left: .5rem; white-space: normal; }
  .takes .file, .takes .status, .takes .more td:last-child { grid-column: 2 / -1; }
  .takes .start, .takes .end, .takes .length { font-size: .78rem; }
  .takes .long { grid-row: auto; grid-column: 1 / -1; }
  .takes .long ~ .start { grid-column: 2; }
  .takes .roll th { grid-column: 1 / -1; }
  .takes thead .roll { border: 0; }
  .takes thead th.status { display: none; }
  .takes td:empty, .takes td bdi:empty { display: none; }
  .takes tr.more { padding-top: 0; margin-top: -.25rem; }
}
${PICTURE_STYLE}`;
