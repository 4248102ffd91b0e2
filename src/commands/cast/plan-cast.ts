import type { Day, Voice } from '../../day/model.ts';
import type { CastEntry } from './cast-list.ts';

/** What adding an entry of a call sheet would do: a new voice, a known one described anew, or nothing. */
export interface PlannedEntry {
  readonly entry: CastEntry;
  readonly does: 'add' | 'describe' | 'nothing';
  /** The voice that is known already: by its cast number, or by part and person where no number was given. */
  readonly known: Voice | undefined;
  /** A line above has the same cast number. */
  readonly twice: boolean;
}

/** Tells for every entry whether it is new. A known voice that was struck off comes back. */
export function planCast(day: Day, entries: readonly CastEntry[]): PlannedEntry[] {
  const performers = [...day.voices.values()].filter(({ kind }) => kind === 'performer');
  const seen = new Set<string>();
  return entries.map((entry) => {
    const same = performers.filter((voice) => isSame(voice, entry));
    // One performer may have two parts under one number.
    const known = same.find((voice) => alike(voice.part, entry.part)) ?? same[0];
    const twice = seen.has(entry.number);
    if (entry.number !== '') seen.add(entry.number);
    if (!known) return { entry, does: 'add', known, twice };
    return { entry, does: isUnchanged(known, entry) ? 'nothing' : 'describe', known, twice };
  });
}

const alike = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

const isSame = (voice: Voice, { number, part, person }: CastEntry): boolean =>
  number === ''
    ? alike(voice.part, part) && (person === '' || alike(voice.person, person))
    : alike(voice.number, number);

/** What an entry leaves empty says nothing. */
const isUnchanged = (voice: Voice, { part, person }: CastEntry): boolean =>
  !voice.struck && (part === '' || voice.part === part) && (person === '' || voice.person === person);

/** The entries with part and person the other way round, but for those that were read for sure. */
export const turnedRound = (entries: readonly CastEntry[]): CastEntry[] =>
  entries.map((entry) =>
    entry.sure || entry.person === '' ? entry : { ...entry, part: entry.person, person: entry.part },
  );
