import type { CastEntry } from '../../callsheet/cast/cast-entry.ts';
import type { Day, Voice, VoiceText } from '../../day/model.ts';

/** What adding a call-sheet entry would do: add a voice, update a known one, or nothing. */
export interface PlannedEntry<Entry extends CastEntry = CastEntry> {
  readonly entry: Entry;
  readonly does: 'add' | 'describe' | 'nothing';
  /** The matching voice: by cast number, or by part and performer if there is no number. */
  readonly known: Voice | undefined;
  /** A line above has the same cast number. */
  readonly twice: boolean;
}

/** Matches every entry with the cast. A removed voice that matches comes back. */
export function planCast<Entry extends CastEntry>(
  day: Day,
  entries: readonly Entry[],
): PlannedEntry<Entry>[] {
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

/** Fields the entry leaves empty are unchanged. */
const isUnchanged = (voice: Voice, { part, person, pickUp = '', onSet = '' }: CastEntry): boolean =>
  !voice.struck &&
  Object.entries({ part, person, pickUp, onSet }).every(
    ([field, said]) => said === '' || voice[field as VoiceText] === said,
  );

/** The entries with part and performer swapped, except those that were certain. */
export const turnedRound = <Entry extends CastEntry>(entries: readonly Entry[]): Entry[] =>
  entries.map((entry) =>
    entry.sure || entry.person === '' ? entry : { ...entry, part: entry.person, person: entry.part },
  );

/** Who played a part before: in the cast of the day, or on the date of an earlier one. */
export interface PlayedBefore {
  readonly part: string;
  readonly person: string;
  readonly date?: string;
}

/** An entry whose cast number may be known from earlier days. */
export type KnownEntry = CastEntry & { readonly known?: PlayedBefore };

/** A part that the sheet has with another performer than before. */
export interface Recast<Entry extends KnownEntry = KnownEntry> {
  readonly entry: Entry;
  readonly known: PlayedBefore;
}

/** Each is asked about: it may be another person, or another spelling. Case and spaces are neither. */
export const recastIn = <Entry extends KnownEntry>(
  planned: readonly PlannedEntry<Entry>[],
): Recast<Entry>[] =>
  planned.flatMap(({ entry, known: inCast }) => {
    const known = inCast ?? entry.known;
    return known && known.person !== '' && entry.person !== '' && !alike(known.person, entry.person)
      ? [{ entry, known }]
      : [];
  });

/** The entries with whoever played the parts of these lines before; the cast of the day need not be told again. */
export const withPerformersKept = <Entry extends KnownEntry>(
  entries: readonly Entry[],
  lines: ReadonlySet<number>,
): Entry[] =>
  entries.map((entry) => (lines.has(entry.line) ? { ...entry, person: entry.known?.person ?? '' } : entry));
