import type { AsideLine } from './aside-line.ts';
import type { SheetPerformer } from './cast/cast-entry.ts';
import { readCastLines, type SheetLine, type UnreadLine } from './cast/cast-list.ts';
import { withoutUnseen } from './cells/sheet-names.ts';
import type { SheetScene } from './scenes/sheet-scene.ts';
import { sortSheet } from './sort-lines.ts';
import { hasTable, linesOfHtml } from './table-of-html.ts';

/** Every non-blank line is in exactly one of these. Lines count from 1. */
export interface CallSheet {
  readonly scenes: readonly SheetScene[];
  readonly cast: readonly SheetPerformer[];
  readonly aside: readonly AsideLine[];
  readonly unread: readonly UnreadLine[];
  /** Lines that only name a column or a section, or are ornament. */
  readonly headings: readonly number[];
}

/**
 * Reads a call sheet or schedule: pasted text, CSV, or a page with tables. A list of performers alone is read
 * as one. `'46 INT. KITCHEN - DAY 2 3/8 1, 2'` is a scene, `'1 INES - Anna Berg'` a performer, `'LUNCH 1300'`
 * is set aside.
 */
export function readCallSheet(text: string): CallSheet {
  const plain = hasTable(text) ? linesOfHtml(text) : text;
  const lines = plain
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((raw, at): SheetLine => ({ line: at + 1, text: raw }));
  const sorted = sortSheet(lines.filter(({ text: raw }) => !isBlank(raw)));
  // Without scenes or a title of its own, everything may be a list of performers, as it always was.
  const isList = sorted.scenes.length === 0 && !sorted.hasCastTitle;
  const people = readCastLines(
    isList ? sorted.people.map(({ line, text: raw }) => ({ line, text: raw })) : sorted.people,
  );
  const { kept, doubtful } = apartFromTheRest(people.entries, sorted.people.length - people.headings.length);
  const unread = [
    ...sorted.unread,
    ...people.unread,
    ...doubtful.flatMap(({ line, more }) => [line, ...more].map((at) => unreadAt(lines, at))),
  ];
  // In front of everything stand titles and addresses; without a number they are no rows.
  const isTitle = ({ line, text: raw, why }: UnreadLine): boolean =>
    !isList && why !== 'too-many' && strict.has(line) && !/^\s*\d{1,3}[a-z]?(?:[\s.)]|$)/i.test(raw);
  const strict = new Set(sorted.people.filter(({ isStrict }) => isStrict).map(({ line }) => line));
  const inOrder = <T extends { readonly line: number }>(all: readonly T[]): T[] =>
    [...all].sort((one, other) => one.line - other.line);
  const titles = unread
    .filter(isTitle)
    .map(({ line, text: raw }): AsideLine => ({ line, text: raw, why: 'note' }));
  return {
    scenes: sorted.scenes,
    cast: kept,
    aside: inOrder([...sorted.aside, ...titles]),
    unread: inOrder(unread.filter((one) => !isTitle(one))),
    headings: [...sorted.headings, ...people.headings].sort((one, other) => one - other),
  };
}

const unreadAt = (lines: readonly SheetLine[], at: number): UnreadLine => ({
  line: at,
  text: lines[at - 1]!.text,
  why: 'not-understood',
});

/** A name alone is a performer among others of that kind, and anything in a page of prose. */
function apartFromTheRest(entries: readonly SheetPerformer[], lines: number) {
  const numbered = entries.filter(({ number }) => number !== '').length;
  const isAlone = ({ number, person, part }: SheetPerformer): boolean =>
    number === '' && (person === '' || part === '');
  const isProse = entries.length * 2 < lines;
  const isDoubtful = (one: SheetPerformer): boolean =>
    (isAlone(one) && (isProse || numbered * 4 >= entries.length * 3)) ||
    (isProse && one.number === '' && !one.sure);
  return { kept: entries.filter((one) => !isDoubtful(one)), doubtful: entries.filter(isDoubtful) };
}

const isBlank = (text: string): boolean =>
  withoutUnseen(text.slice(0, 1000)).trim() === '' && text.slice(1000).trim() === '';
