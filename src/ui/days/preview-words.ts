import { type Dispute, type Envelope, readFact } from '../../app/import/import-days.ts';
import type { DayChanges, Preview } from '../../app/preview.ts';
import { type Day, isKnown, type Take } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { changeText } from '../../report/revision/change.ts';
import { countOf, listOf } from '../words/chain.ts';
import { conflictWords } from '../words/conflicts.ts';
import { factWords } from '../words/facts.ts';

const SHOWN = 6;
const LONGEST = 60;

/** What an import would do to a day, one line each, most important first. */
export function previewLines(preview: Preview): string[] {
  const { fresh, mended, known, changes, datedMs, after, saysWhoWrites } = preview;
  if (fresh + mended === 0)
    return [`Nothing new: ${known === 1 ? 'the entry is' : `all ${known} entries are`} here already.`];
  return [
    [
      countOf(fresh, 'new entry', 'new entries'),
      known > 0 ? `${known} here already` : '',
      mended > 0 ? `${mended} repaired that ${mended === 1 ? 'was' : 'were'} damaged here` : '',
    ]
      .filter(Boolean)
      .join(', '),
    ...(saysWhoWrites
      ? ['It says who may write on this day, and that is not checked. Sealed codes and files are checked.']
      : []),
    ...(datedMs === null ? [] : [`Dated later than this phone's clock, up to ${dateOf(datedMs)}.`]),
    ...(changes
      ? changeLines(after, changes)
      : ['There are too many entries to compare line by line before importing.']),
  ];
}

const dateOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

function changeLines(after: Day, changes: DayChanges): string[] {
  const { head, added, gone, opened, other, conflicts } = changes;
  return [
    ...head.map(changeText),
    takesLine((count) => `Removes ${count}`, gone),
    takesLine((count) => `Adds ${count}`, added),
    opened.length > 0
      ? `${listOf(opened.map(takeText))} ${opened.length === 1 ? 'is' : 'are'} still rolling on the other phone, and would be here too.`
      : '',
    conflicts.length > 0
      ? `Brings ${countOf(conflicts.length, 'conflict')}: ${some(conflicts.map((one) => conflictWords(after, one)))}.`
      : '',
    other.length > 0
      ? `Changes ${countOf(other.length, 'line')} of the report: ${some(other.map(changeText).map(withoutStop))}.`
      : '',
  ].filter(Boolean);
}

function takesLine(said: (count: string) => string, takes: readonly Take[]): string {
  const [first] = takes;
  if (!first) return '';
  const names = takes.map(takeText);
  const which = names.length <= SHOWN ? listOf(names) : `${names[0]} to ${names.at(-1)}`;
  return `${said(countOf(takes.length, 'take'))}: ${which}.`;
}

const withoutStop = (sentence: string): string => sentence.replace(/\.$/, '');

/** The first few, and how many more. */
function some(lines: readonly string[]): string {
  const more = lines.length - SHOWN;
  return [...lines.slice(0, SHOWN), ...(more > 0 ? [`${more} more`] : [])].join('; ');
}

/** One entry with two versions: the phone's and the file's. */
export function disputeWords(day: Day, { here, there }: Dispute): string {
  const [ours, theirs] = [entryWords(day, here), entryWords(day, there)];
  if (ours !== theirs) return `Here: ${ours}. In the file: ${theirs}.`;
  const [one, other] = [leavesOf(here), leavesOf(there)];
  const differ = [...new Set([...one.keys(), ...other.keys()])].filter(
    (name) => one.get(name) !== other.get(name),
  );
  const both = differ.map(
    (name) => `${name}: here ${one.get(name) ?? 'nothing'}, in the file ${other.get(name) ?? 'nothing'}`,
  );
  return `${ours}. ${some(both)}.`;
}

/** The values of an entry by path: `'production'`, `'parts 3 name'`. */
function leavesOf(value: unknown, name = '', leaves = new Map<string, string>()): Map<string, string> {
  if (typeof value !== 'object' || value === null) {
    leaves.set(name, String(value).slice(0, LONGEST) || 'nothing');
    return leaves;
  }
  for (const [field, inside] of Object.entries(value)) {
    const own = Array.isArray(value) ? String(Number(field) + 1) : field;
    leavesOf(inside, [name, own === 'fields' ? '' : own].filter(Boolean).join(' '), leaves);
  }
  return leaves;
}

function entryWords(day: Day, fact: Envelope): string {
  const read = readFact(fact);
  return read.ok && isKnown(read.value) ? factWords(day, read.value) : 'an entry of a newer version';
}
