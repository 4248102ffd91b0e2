import type { HandOverLine } from '../hand-over-lines.ts';
import { isolated } from '../isolated.ts';
import { bytesText, counted } from './figures.ts';

/** `'2 checked copies'`, `'no checked copy'`. */
export const copiesText = (copies: number): string =>
  copies === 0 ? 'no checked copy' : counted(copies, 'checked copy', 'checked copies');

/**
 * `'Card A (2 checked copies), Drive 3 (no checked copy) to S. Okafor, data wrangler, 2026-10-07 18:42: 12 files, 41.6 MB;
 * checked against the log; signed'`.
 */
export function handOverText(line: HandOverLine): string {
  const { carriers, to, role, checked } = line;
  const what = carriers.map(({ name, copies }) => `${isolated(name)} (${copiesText(copies)})`).join(', ');
  const whom = [to, role].filter(Boolean).map(isolated).join(', ');
  const size = sizeText(line);
  const state = [checked ? 'checked against the log' : 'not checked', signedText(line)].join('; ');
  return `${what} to ${whom}, ${momentText(line)}: ${size ? `${size}; ` : ''}${state}`;
}

/** `'12 files, 41.6 MB'`; empty if nobody entered them. */
const sizeText = ({ files, bytes }: Pick<HandOverLine, 'files' | 'bytes'>): string =>
  [...(files === null ? [] : [counted(files, 'file')]), ...(bytes ? [bytesText(bytes)] : [])].join(', ');

function signedText({ strokes, typed }: HandOverLine): string {
  if (typed) return `signed ${isolated(typed)}`;
  return strokes ? 'signed' : 'not signed';
}

/** `'2026-10-07 18:42'`, by the clock of whoever handed it over. */
const momentText = ({ at, zone }: HandOverLine): string =>
  new Date(at + zone * 60_000).toISOString().slice(0, 16).replace('T', ' ');
