import type { Problem } from '../../shared/result.ts';

type Say = (problem: Problem) => string;

export const quoted = (value: unknown): string => `“${String(value).slice(0, 60)}”`;

const RESTART: Record<string, string> = {
  'open-take': 'A take is rolling. Cut it, then restart.',
  'not-saved': 'Something is not saved yet. It is tried again; then restart.',
  'no-update': 'There is no new version.',
  'other-window': 'The app is open in another window. Close it, then restart.',
  'not-whole':
    'Some of the new version is missing from this phone. It is fetched again when there is signal.',
  'no-answer': 'The new version did not start. It starts with the next start of the app.',
};

/** Every code a command or a reader can fail with, as a sentence that says what and where. */
const SENTENCES: Record<string, Say> = {
  'not-on-this-day': ({ what }) =>
    `This day has no such ${what}. It may have been taken out on another phone.`,
  'take-open': ({ take }) => `${take} is still rolling. Cut it first.`,
  'no-take-open': () => 'No take is rolling.',
  'gang-of-one': ({ track }) => `Only one voice is on track ${track}; a gang needs two.`,
  'note-empty': () => 'The note is empty.',
  'note-too-long': ({ length, longest }) => `The note has ${length} characters; ${longest} is the most.`,
  'name-empty': () => 'A name is missing.',
  'already-taken-back': () => 'That is taken back already.',
  'not-taken-back': () => 'That was not taken back.',
  'nothing-to-undo': () => 'Nothing to undo on this phone.',
  'undo-built-on': ({ take, count }) =>
    `Another phone has ${count === 1 ? 'one entry' : `${count} entries`} on ${take}. Undo takes the take away from that phone too.`,
  'day-full': () =>
    'No entry can follow on this day: one with an impossible number was taken in. Start the next day from this one.',
  'entry-unfit': ({ where }) =>
    `That is more than an entry can hold (${quoted(where)}), so it could not be read again. Nothing was changed.`,
  'nothing-to-redo': () => 'Nothing to bring back.',
  'restart-refused': ({ because }) => RESTART[String(because)] ?? 'Not now.',
  'fact-damaged': ({ where, line }) =>
    `${line ? `Line ${line}: an` : 'An'} entry is damaged at ${quoted(where)}. Nothing was taken in.`,
  'fact-id-twice': () =>
    'The file contradicts this day: one entry has two different contents. Nothing was taken in.',
};

/** Sentences of pages that are not in the first load, which bring them along. */
const learnt = new Map<string, Say>();

export function learnSentences(sentences: Readonly<Record<string, Say>>): void {
  for (const [code, say] of Object.entries(sentences)) learnt.set(code, say);
}

/** The sentence for a problem; one that has none yet is at least named. */
export function sentenceFor(problem: Problem): string {
  const say = SENTENCES[problem.code] ?? learnt.get(problem.code);
  return say?.(problem) ?? `That did not work (${problem.code}).`;
}
