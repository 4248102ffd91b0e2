import type { FileRead, Imported } from '../../app/import-files.ts';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';

/** What is wrong with a file, and how much of it can still be read. */
export function damageWords({ file, damage }: FileRead): string {
  if (!damage) return `complete, ${countOf(file?.facts.length ?? 0, 'entry', 'entries')}`;
  const why = sentenceFor(damage.problem).replace(/ (Nothing|It) was (not )?(imported|read)\.$/, '');
  if (!file) return `${why} Nothing in it can be read.`;
  const lost = damage.lost > 0 ? `, ${damage.lost} cannot` : '';
  // Only an entry's own check notices a changed letter that still parses.
  const doubt = file.unchecked
    ? ' An older version wrote it without checks: a changed entry would go unnoticed.'
    : '';
  return `${why} ${countOf(file.facts.length, 'entry', 'entries')} can be read${lost}.${doubt}`;
}

/** The result of an import: how many entries were then found on the disk, and what is missing. */
export function importedWords(reads: readonly FileRead[], imported: Imported): string {
  const { entries, fresh, verified, days, refused } = imported;
  const lost = reads.reduce((sum, { file, damage }) => sum + (file ? (damage?.lost ?? 0) : 0), 0);
  const unread = reads.filter(({ file }) => !file).length;
  return [
    `${countOf(entries, 'entry', 'entries')} of ${countOf(days.length, 'day')}: ${
      verified === entries ? 'all' : verified
    } checked one by one on this phone, ${fresh} of them new.`,
    verified < entries ? `${entries - verified} are not saved yet; saving is tried again.` : '',
    lost > 0
      ? `${countOf(lost, 'entry was', 'entries were')} damaged in ${lost === 1 ? 'its' : 'their'} file${
          reads.length > 1 ? ', and came where another file has them' : ''
        }.`
      : '',
    unread > 0 ? `${countOf(unread, 'file')} could not be read at all.` : '',
    refused.length > 0 ? `${countOf(refused.length, 'file')} conflicted with this phone and stayed out.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}
