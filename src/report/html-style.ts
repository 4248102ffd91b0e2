/** The look of the HTML report: paper and ink, hairlines, a ring round circled takes that a printer keeps. */
export const HTML_STYLE = `
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
