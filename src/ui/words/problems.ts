import type { Problem } from '../../shared/result.ts';

type Say = (problem: Problem) => string;

const quoted = (value: unknown): string => `“${String(value).slice(0, 60)}”`;

const RESTART: Record<string, string> = {
  'open-take': 'A take is rolling. Cut it, then restart.',
  'not-saved': 'Something is not saved yet. It is tried again; then restart.',
  'no-update': 'There is no new version.',
  'other-window': 'The app is open in another window. Close it, then restart.',
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
  'roll-name': ({ longest }) => `A roll needs a name of at most ${longest} characters.`,
  'name-empty': () => 'A name is missing.',
  'date-unknown': ({ typed }) => `${quoted(typed)} is not a date.`,
  'rate-unknown': ({ timecodeRate }) => `${quoted(timecodeRate)} is not a timecode rate.`,
  'cast-empty': () => 'No line could be read as a performer.',
  'already-taken-back': () => 'That is taken back already.',
  'not-taken-back': () => 'That was not taken back.',
  'before-itself': () => 'A take cannot stand before itself.',
  'nothing-to-undo': () => 'Nothing to undo on this phone.',
  'nothing-to-redo': () => 'Nothing to bring back.',
  'slate-not-a-number': ({ typed }) => `${quoted(typed)} is not a slate number.`,
  'slate-without-number': ({ typed }) => `${quoted(typed)} has no scene number.`,
  'slate-letter-unused': ({ typed }) => `${quoted(typed)}: the letters I and O are not used on slates.`,
  'slate-too-long': ({ typed }) => `${quoted(typed)} is too long for a slate.`,
  'rig-unread': ({ piece }) =>
    `${quoted(piece)} could not be read. Try “16 tracks, 4 mic, 4 AES3, 2 return, 8 slots”.`,
  'rig-too-many': ({ piece, most }) => `${quoted(piece)}: ${most} is the most.`,
  'rig-without-tracks': () => 'Say how many tracks the recorder has.',
  'rig-without-inputs': () => 'Say which inputs the recorder has.',
  'receiver-channels': ({ least, most }) => `A receiver has ${least} to ${most} channels.`,
  'how-many': ({ least, most }) => `Between ${least} and ${most}, please.`,
  'name-too-long': ({ longest }) => `That name is too long; ${longest} characters is the most.`,
  'name-taken': ({ name }) => `${quoted(name)} is in the rig already. Two of a kind need two names.`,
  'part-recorded': ({ name, take }) =>
    `${name} was used on ${take}, and this would change that take. Unplug, retune or throw it from here on instead.`,
  'output-reserved': ({ name, kept }) => `${name} is kept for ${kept}; no voice goes that way.`,
  'selector-there': ({ input }) => `${input} has a selector already.`,
  'rig-empty': () => 'There is no rig there.',
  'frequency-not-read': ({ typed }) => `${quoted(typed)} is not a frequency. Type MHz, as 606.250.`,
  'frequency-too-fine': ({ typed }) => `${quoted(typed)} is finer than a kHz.`,
  'frequency-out-of-range': ({ typed }) => `${quoted(typed)} is out of range. Type MHz, as 606.250.`,
  'block-empty': () => 'There is nothing to plug on one side.',
  'timecode-empty': () => 'No timecode was typed.',
  'timecode-not-read': ({ text, at, found }) =>
    `${quoted(text)}: ${quoted(found)} at place ${Number(at) + 1} is no timecode.`,
  'timecode-too-short': ({ text }) => `${quoted(text)} is too short for a timecode.`,
  'timecode-too-long': ({ text }) => `${quoted(text)} is too long for a timecode.`,
  'timecode-out-of-range': ({ text, part, max }) => `${quoted(text)}: ${part} go up to ${max}.`,
  'timecode-dropped': ({ text, next }) =>
    `${quoted(text)} does not exist in drop-frame; the next is ${next}.`,
  'take-number': ({ typed }) => `${quoted(typed)} is not a take number from 1 to 9999.`,
  'length-unread': ({ typed }) => `${quoted(typed)} is not a length. Type minutes and seconds, as 1:52.`,
  'length-too-long': ({ typed }) => `${quoted(typed)} is longer than a day.`,
  'file-name-too-long': ({ longest }) => `A file name has at most ${longest} characters.`,
  'restart-refused': ({ because }) => RESTART[String(because)] ?? 'Not now.',
  'share-not-allowed': () => 'The phone did not open its share sheet. Tap once more.',
  'share-open-already': () => 'A share sheet is open already.',
  'share-target-failed': () => 'The app you chose could not take the files.',
  'share-refused': () => 'This browser does not share such files. Download or copy instead.',
  'share-failed': ({ name }) => `Sharing failed (${name}). Download or copy instead.`,
  'download-failed': () => 'The download failed. Copy instead.',
  'copy-failed': () => 'The text could not be copied.',
  'sample-missing': () => 'The sample day is not on this phone yet. Open the app once with a signal.',
  'day-file-empty': () => 'The file is empty.',
  'day-file-too-large': () => 'The file is far larger than any day. It was not read.',
  'day-file-too-many-facts': () => 'The file has more entries than any day. It was not read.',
  'day-file-not-json': () => 'This is not a day file: its first line cannot be read.',
  'day-file-other-kind': () => 'This is a file of another kind, not a day file.',
  'day-file-newer': () =>
    'This day file comes from a newer version of the app. Update the app, then take it in.',
  'day-file-head-damaged': ({ where }) => `The first line of the file is damaged at ${quoted(where)}.`,
  'day-file-truncated': ({ expected, found, line }) =>
    `The file ends early, at line ${line}: ${found} of ${expected} entries are there. Nothing was taken in.`,
  'day-file-goes-on': ({ line }) => `The file goes on after its end, at line ${line}. Nothing was taken in.`,
  'day-file-count-wrong': ({ expected, found }) =>
    `The file says it has ${expected} entries and has ${found}. Nothing was taken in.`,
  'day-file-check-wrong': () => 'The file is damaged: its check does not fit. Nothing was taken in.',
  'line-not-json': ({ line }) => `Line ${line} of the file cannot be read. Nothing was taken in.`,
  'line-too-long': ({ line }) => `Line ${line} of the file is too long. Nothing was taken in.`,
  'line-too-deep': ({ line }) => `Line ${line} of the file is nested too deep. Nothing was taken in.`,
  'fact-of-another-day': ({ line }) =>
    `Line ${line} of the file belongs to another day. Nothing was taken in.`,
  'counter-beyond-limit': ({ line }) =>
    `Line ${line} of the file has an impossible number. Nothing was taken in.`,
  'fact-damaged': ({ where, line }) =>
    `${line ? `Line ${line}: an` : 'An'} entry is damaged at ${quoted(where)}. Nothing was taken in.`,
  'fact-id-twice': () =>
    'The file contradicts this day: one entry has two different contents. Nothing was taken in.',
  'nothing-changed': () => 'Nothing has changed.',
  'voice-on-takes': ({ name, take, count }) =>
    `${name} is on ${take}${Number(count) > 1 ? ` and ${Number(count) - 1} more` : ''}, and those lines would lose a name. Say done instead.`,
};

/** The sentence for a problem; one that has none yet is at least named. */
export const sentenceFor = (problem: Problem): string =>
  SENTENCES[problem.code]?.(problem) ?? `That did not work (${problem.code}).`;
