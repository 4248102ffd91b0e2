import { learnSentences, quoted } from './problems.ts';

const dateOf = (ms: unknown): string => new Date(Number(ms)).toISOString().slice(0, 10);

// What only some screens can cause: it comes with the screens that import it, not with the first load.
learnSentences({
  'roll-name': ({ longest }) => `A roll needs a name of at most ${longest} characters.`,
  'date-unknown': ({ typed }) => `${quoted(typed)} is not a date.`,
  'rate-unknown': ({ timecodeRate }) =>
    timecodeRate
      ? `${quoted(timecodeRate)} is not a timecode rate that this version counts in. The day's head sets it.`
      : 'This version does not count in the timecode rate of the day. The head of the day sets it.',
  'cast-empty': () => 'No line could be read as a performer.',
  'before-itself': () => 'A take cannot stand before itself.',
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
  'length-unread': ({ typed }) =>
    `${quoted(typed)} is not a length. Type minutes and seconds, as 1:52, or hours before them, as 1:02:10.`,
  'length-too-long': ({ typed }) => `${quoted(typed)} is longer than a day.`,
  'file-name-too-long': ({ longest }) => `A file name has at most ${longest} characters.`,
  'share-not-allowed': () => 'The phone did not open its share sheet. Tap once more.',
  'share-open-already': () => 'A share sheet is open already.',
  'share-target-failed': () => 'The app you chose could not take the files.',
  'share-refused': () => 'This browser does not share such files. Download or copy instead.',
  'share-failed': ({ name }) => `Sharing failed (${name}). Download or copy instead.`,
  'download-failed': () => 'The download failed. Copy instead.',
  'copy-failed': () => 'The text could not be copied.',
  'sample-missing': () => 'The sample day is not on this phone yet. Open the app once with a signal.',
  'held-contradicts': ({ count }) =>
    `${count === 1 ? 'One action contradicts' : `${count} actions contradict`} an entry of this day under the same number, and stays out until you discard. The others were taken in.`,
  'day-erased': () => 'This day was erased in another window.',
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
  'fact-changed': ({ line }) => `Line ${line} of the file was changed on its way. Nothing was taken in.`,
  'fact-of-another-day': ({ line }) =>
    `Line ${line} of the file belongs to another day. Nothing was taken in.`,
  'counter-beyond-limit': ({ line }) =>
    `Line ${line} of the file has an impossible number. Nothing was taken in.`,
  'not-shared': () => 'What was shared could not be read. Share it once more, or choose it here.',
  'turned-away': () =>
    'A web page tried to hand over a file. It was not kept: files come in by the share sheet of the phone, or are chosen here.',
  'door-counter': ({ limit }) =>
    `An entry in the file has a number above ${Number(limit).toLocaleString('en-GB')}, which no day comes to. Nothing was taken in.`,
  'door-date': ({ atMs, nowMs }) =>
    `An entry in the file is dated ${dateOf(atMs)}, and this phone's date is ${dateOf(nowMs)}. If the phone is wrong, set its date and take the file in again. Nothing was taken in.`,
  'door-facts': ({ count, limit }) =>
    `With the file the day would have ${Number(count).toLocaleString('en-GB')} entries; ${Number(limit).toLocaleString('en-GB')} is the most. Nothing was taken in.`,
  'door-databases': ({ count, limit }) =>
    `With the file the day would have entries of ${count} phones; ${limit} is the most. Nothing was taken in.`,
  'door-size': () => 'With the file the day would be larger than any day file may be. Nothing was taken in.',
  'weight-unusable': ({ move, weight }) => `${quoted(weight)} is no cost for ${quoted(move)}: 1 to 99.`,
  'pinned-twice': () => 'One pack is pinned to two people. Let one of them go.',
  'not-a-wave-name': () => 'is no sound file by its name.',
  'not-a-wave': () => 'is no wave file.',
  'file-empty': () => 'is empty.',
  'file-unreadable': ({ at }) => `could not be read at byte ${at}; the card may have been pulled out.`,
  'card-empty': () => 'The card has no recording.',
  'file-value-unfit': () => 'The file says something no log can hold.',
  'pattern-empty': () => 'The pattern of file names is empty.',
  'pattern-brace-open': ({ at }) =>
    `The pattern of file names has a brace that is not closed, at place ${Number(at) + 1}.`,
  'pattern-token-unknown': ({ token }) =>
    `The pattern of file names has an unknown word: {${String(token).slice(0, 30)}}.`,
  'pattern-character-unsafe': ({ found }) => `${quoted(found)} cannot stand in a file name.`,
  'pattern-names-all-alike': () =>
    'With this pattern all files would have one name. Put {slate} and {take} or {count} in it.',
  'nothing-changed': () => 'Nothing has changed.',
  'voice-on-takes': ({ name, take, count }) =>
    `${name} is on ${take}${Number(count) > 1 ? ` and ${Number(count) - 1} more` : ''}, and those lines would lose a name. Say done instead.`,
  'mail-address-not-read': ({ address }) =>
    `${quoted(address)} is not a mail address. The draft was not made.`,
  'plan-too-large': () => 'This rig is too large to plan.',
  'plan-failed': () => 'The plan could not be worked out on this phone.',
  'day-file-nothing-readable': () => 'Nothing in the file could be read.',
  'file-ends-early': ({ at }) => `ends early, at byte ${at}; it may still be written.`,
  'read-budget-spent': () => 'has more headers than are worth reading.',
  'no-name': () => 'The line has no name.',
  'not-understood': () => 'The line was not understood.',
  'costs-of-wrong-size': () => 'The plan could not be computed: a table has the wrong size.',
  'cost-not-whole': () => 'The plan could not be computed: a cost is not a whole number.',
  'costs-too-large': () => 'The plan could not be computed: the costs are too large.',
});
