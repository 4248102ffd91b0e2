import { formatMhz } from '../../app/commands/typed.ts';
import type { Problem, ProblemCode, ProblemOf } from '../../shared/result.ts';
import { figure, limit, plain } from './figures.ts';

export const quoted = (value: unknown): string => `“${String(value).slice(0, 60)}”`;
const mhz = (khz: number): string => `${formatMhz(khz)} MHz`;
const dateOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
const grouped = (count: number): string => count.toLocaleString('en-GB');

const RESTART: Record<string, string> = {
  'open-take': 'A take is rolling. Cut it, then restart.',
  'not-saved': 'Something is not saved yet. It is tried again; then restart.',
  'no-update': 'There is no new version.',
  'other-window': 'The app is open in another window. Close it, then restart.',
  'not-whole':
    'Some of the new version is missing from this phone. It is fetched again when there is signal.',
  'no-answer': 'The new version did not start. It starts when the app is next opened.',
};

/** A sentence for every code a command or a reader can fail with, saying what and where. */
const SENTENCES: { readonly [Code in ProblemCode]: (problem: ProblemOf<Code>) => string } = {
  'not-on-this-day': ({ what }) => `This day has no such ${what}. It may have been deleted on another phone.`,
  'take-open': ({ take }) => `${take} is still rolling. Cut it first.`,
  'no-take-open': () => 'No take is rolling.',
  'gang-of-one': ({ track }) => `Only one voice is on track ${track}; a gang needs two.`,
  'note-empty': () => 'The note is empty.',
  'note-too-long': ({ length, longest }) => `The note has ${length} characters; ${longest} is the most.`,
  'name-empty': () => 'A name is missing.',
  'already-taken-back': () => 'That is removed already.',
  'not-taken-back': () => 'That was not removed.',
  'nothing-to-undo': () => 'Nothing to undo on this phone.',
  'undo-built-on': ({ take, count }) =>
    `Another phone has ${count === 1 ? 'one entry' : `${count} entries`} on ${take}. Undo removes the take on that phone too.`,
  'day-full': () =>
    'No entry can follow on this day: one with an impossible number was imported. Start the next day from this one.',
  'entry-unfit': ({ where }) =>
    `That is more than an entry can hold (${quoted(where)}), so it could not be read again. Nothing was changed.`,
  'nothing-to-redo': () => 'Nothing to bring back.',
  'restart-refused': ({ because }) => RESTART[because] ?? 'Not now.',
  'fact-damaged': ({ where, line }) =>
    `${line ? `Line ${line}: an` : 'An'} entry is damaged at ${quoted(where)}. Nothing was imported.`,
  'fact-id-twice': () =>
    'The file conflicts with this day: one entry has two different contents. Nothing was imported.',
  'roll-name': ({ longest }) => `A roll needs a name of at most ${longest} characters.`,
  'date-unknown': ({ typed }) => `${quoted(typed)} is not a date.`,
  'rate-unknown': ({ timecodeRate }) =>
    timecodeRate
      ? `${quoted(timecodeRate)} is not a timecode rate that this version counts in. Set it in the day details.`
      : 'This version does not count in the timecode rate of the day. Set it in the day details.',
  'cast-empty': () => 'No line could be read as a performer.',
  'before-itself': () => 'A take cannot go before itself.',
  'slate-not-a-number': ({ typed }) => `${quoted(typed)} is not a slate number.`,
  'slate-without-number': ({ typed }) => `${quoted(typed)} has no scene number.`,
  'slate-letter-unused': ({ typed }) => `${quoted(typed)}: the letters I and O are not used on slates.`,
  'slate-too-long': ({ typed }) => `${quoted(typed)} is too long for a slate.`,
  'sheet-too-large': ({ most }) => `The file is larger than ${most} MB, too large for a call sheet.`,
  'sheet-unread': ({ name }) => `${quoted(name)} could not be read. Copy its text and paste it instead.`,
  'pdf-without-text': () =>
    'This PDF is a picture without text. Ask for the file it was printed from, or type the scenes.',
  'scene-number': ({ longest }) => `A scene needs a number of at most ${longest} characters.`,
  'scene-twice': ({ number }) => `Scene ${number} is on the list already.`,
  'too-many-scenes': ({ most }) => `${most} scenes are the most a day can hold.`,
  'rig-unread': ({ piece }) =>
    `${quoted(piece)} could not be read. Try “16 tracks, 4 mic, 4 AES3, 2 return, 8 slots”.`,
  'rig-too-many': ({ piece, most }) => `${quoted(piece)}: ${most} is the most.`,
  'rig-without-tracks': () => 'Type how many tracks the recorder has.',
  'rig-without-inputs': () => 'Type which inputs the recorder has.',
  'receiver-channels': ({ least, most }) => `A receiver has ${least} to ${most} channels.`,
  'how-many': ({ least, most }) => `Between ${least} and ${most}, please.`,
  'name-too-long': ({ longest }) => `That name is too long; ${longest} characters is the most.`,
  'name-taken': ({ name }) => `${quoted(name)} is in the rig already. Two of a kind need two names.`,
  'recorder-rolled': ({ name, take }) =>
    `${name} rolled on ${take}, and this would change that take. Stop it from here on instead.`,
  'unit-not-moved': () => 'The unit has not moved on this day.',
  'lead-in-two': ({ name }) =>
    `${name} cannot go into two inputs of one recorder. Send one input to both tracks instead.`,
  'tracks-of-first': ({ name, take }) =>
    `${name} has the tracks of the first recorder on ${take}. Add another recorder for tracks of its own.`,
  'track-elsewhere': ({ input, track }) => `Track ${track} is on another recorder than ${input}.`,
  'no-recorder-rolls': () => 'One recorder at least has to roll.',
  'part-recorded': ({ name, take }) =>
    `${name} was used on ${take}, and this would change that take. Unplug, retune or throw it from here on instead.`,
  'output-reserved': ({ name, kept }) => `${name} is kept for ${kept}; no voice goes that way.`,
  'selector-there': ({ input }) => `${input} has a selector already.`,
  'rig-empty': () => 'There is no rig there.',
  'block-empty': () => 'There is nothing to patch on one side.',
  'timecode-empty': () => 'No timecode was typed.',
  'timecode-not-read': ({ text, at, found }) =>
    `${quoted(text)}: ${quoted(found)} at place ${at + 1} does not belong in a timecode.`,
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
    `${count === 1 ? 'One action conflicts' : `${count} actions conflict`} with an entry of this day that has the same number, and stays out until you discard. The others were restored.`,
  'codes-damaged': () => 'The codes were read but hold no day. Start again on the other phone.',
  'codes-newer': () => 'The other phone has a newer version of the app. Update this one, then read again.',
  'codes-of-another-day': () => 'The other phone has another day open. Open the same day on both.',
  'codes-too-many': () => 'That is too much for codes. Send the day file instead.',
  'camera-refused': () =>
    'The camera is not allowed. Allow it for this site in the browser, or send the day file instead.',
  'camera-missing': () => 'This device has no camera that the browser can use. Send the day file instead.',
  'camera-busy': () => 'The camera is in use by another app. Close that app and try again.',
  'day-reads-only': () => 'This phone only reads this day, so nothing was changed.',
  'day-erased': () => 'This day was erased in another window.',
  'live-gone': () => 'The live server cannot be reached. What is entered here is shared once it can be.',
  'live-slow': () => 'The live server answers too slowly. Trying again.',
  'live-password': () => 'The live server refused the password. Scan a new live code.',
  'live-not-allowed': () =>
    'The live server lets this phone read and not write. Scan the live code for the department.',
  'live-no-log': () =>
    'The live server has lost its log, or was never set up. Ask whoever runs it; once there is one, the phones fill it again.',
  'live-full': () =>
    'The live server is full. Nothing here is lost, and it is given when there is room; tell whoever runs it.',
  'live-too-large': () =>
    'One action is larger than the live server accepts, so it is not shared. Send the day file for it.',
  'live-key-twice': () =>
    'A copy of this phone writes as the owner of the day, so this one shares nothing more. Send it the day file, erase the day here, and join again.',
  'live-code': () => 'That is no live code.',
  'join-word-used': () => 'That code was used already, or was shown by another phone. Show a new join code.',
  'live-not-owner': () => 'Only the phone that owns the day can let others write.',
  'live-not-admitted': () =>
    'What is entered here is not shared: the owner of the day has not let this phone write. Show the owner its code.',
  'live-elsewhere': () => 'This day is live in another window. Close that window and try again.',
  'sealed-not-joined': () => 'It is sealed, and this phone has not joined its day. Scan a join code first.',
  'sealed-nothing': () =>
    'Nothing in it counts here: it is damaged, by a phone that may not write, or sealed with a key that this phone lacks.',
  'day-file-empty': () => 'The file is empty.',
  'day-file-too-large': () => 'The file is far larger than any day. It was not read.',
  'day-file-too-many-facts': () => 'The file has more entries than any day. It was not read.',
  'day-file-not-json': () => 'This is not a day file: its first line cannot be read.',
  'day-file-other-kind': () => 'This is a file of another kind, not a day file.',
  'day-file-newer': () =>
    'This day file comes from a newer version of the app. Update the app, then import it.',
  'day-file-head-damaged': ({ where }) => `The first line of the file is damaged at ${quoted(where)}.`,
  'day-file-truncated': ({ expected, found, line }) =>
    `The file ends early, at line ${line}: ${found} of ${expected} entries are there. Nothing was imported.`,
  'day-file-goes-on': ({ line }) => `The file goes on after its end, at line ${line}. Nothing was imported.`,
  'day-file-count-wrong': ({ expected, found }) =>
    `The file says it has ${expected} entries and has ${found}. Nothing was imported.`,
  'day-file-check-wrong': () => 'The file is damaged: its checksum does not match. Nothing was imported.',
  'line-not-json': ({ line }) => `Line ${line} of the file cannot be read. Nothing was imported.`,
  'line-too-long': ({ line }) => `Line ${line} of the file is too long. Nothing was imported.`,
  'line-too-deep': ({ line }) => `Line ${line} of the file is nested too deep. Nothing was imported.`,
  'fact-changed': ({ line }) => `Line ${line} of the file was changed on its way. Nothing was imported.`,
  'fact-of-another-day': ({ line }) =>
    `Line ${line} of the file belongs to another day. Nothing was imported.`,
  'counter-beyond-limit': ({ line }) =>
    `Line ${line} of the file has an impossible number. Nothing was imported.`,
  'not-shared': () => 'What was shared could not be read. Share it once more, or choose it here.',
  'turned-away': () =>
    'A web page tried to send a file. It was not kept: share files from the phone, or choose them here.',
  'admit-counter': ({ limit }) =>
    `An entry in the file has a number above ${grouped(limit)}, which no day comes to. Nothing was imported.`,
  'admit-date': ({ atMs, nowMs }) =>
    `An entry in the file is dated ${dateOf(atMs)}, and this phone's date is ${dateOf(nowMs)}. If the phone is wrong, set its date and import the file again. Nothing was imported.`,
  'admit-facts': ({ count, limit }) =>
    `With the file the day would have ${grouped(count)} entries; ${grouped(limit)} is the most. Nothing was imported.`,
  'admit-databases': ({ count, limit }) =>
    `With the file the day would have entries of ${count} phones; ${limit} is the most. Nothing was imported.`,
  'admit-size': () => 'With the file the day would be larger than any day file may be. Nothing was imported.',
  'weight-unusable': ({ move, weight }) => `${quoted(weight)} for ${quoted(move)} must be from 1 to 99.`,
  'pinned-twice': () => 'One pack is pinned to two people. Remove one of the pins.',
  'not-a-wave-name': () => 'does not look like a sound file.',
  'not-a-wave': () => 'is not a wave file.',
  'file-empty': () => 'is empty.',
  'file-unreadable': ({ at }) => `could not be read at byte ${at}; the card may have been pulled out.`,
  'card-empty': () => 'The card has no recording.',
  'file-value-unfit': () => 'The file has a value that the log cannot keep.',
  'pattern-empty': () => 'The pattern of file names is empty.',
  'pattern-brace-open': ({ at }) =>
    `The pattern of file names has a brace that is not closed, at place ${at + 1}.`,
  'pattern-token-unknown': ({ token }) =>
    `The pattern of file names has an unknown word: {${token.slice(0, 30)}}.`,
  'pattern-character-unsafe': ({ found }) => `${quoted(found)} cannot be used in a file name.`,
  'pattern-names-all-alike': () =>
    'With this pattern all files would have one name. Put {slate} and {take} or {count} in it.',
  'nothing-changed': () => 'Nothing has changed.',
  'voice-on-takes': ({ name, take, count }) =>
    `${name} is on ${take}${count > 1 ? ` and ${count - 1} more` : ''}, and those lines would lose a name. Mark them wrapped instead.`,
  'mail-address-not-read': ({ address }) =>
    `${quoted(address)} is not an email address. The draft was not made.`,
  'id-used-twice': ({ list, id }) => `Two of the ${list} have one id, ${quoted(id)}. Delete one of them.`,
  'weight-not-whole': ({ weight }) => `${quoted(weight)} must be a whole number, 1 or more.`,
  'priority-not-a-number': () => 'A priority is not a number.',
  'lead-of-two-sources': ({ lead }) =>
    `Lead ${quoted(lead)} comes from two sources. Unplug it from one of them.`,
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
  'quantity-not-finite': ({ field }) => `${figure(field)}: not a number.`,
  'quantity-out-of-range': ({ field, value, min, max }) =>
    `${figure(field)}: ${limit(field, value)} is out of range. Between ${limit(field, min)} and ${limit(field, max)}, please.`,
  'quantity-not-whole': ({ field }) => `${figure(field)}: a whole number, please.`,
  'number-unread': ({ field, typed }) => `${figure(field)}: ${quoted(typed)} is not a number.`,
  'nothing-chosen': () => 'Nothing is chosen.',

  'frequency-empty': () => 'Type a frequency in MHz, as 606.250.',
  'frequency-unreadable': ({ text }) => `${quoted(text)} is not a frequency. Type MHz, as 606.250.`,
  'frequency-finer-than-khz': ({ text }) => `${quoted(text)} is finer than 1 kHz.`,
  'frequency-not-whole': () => 'A frequency is a whole number of kHz.',
  'frequency-not-positive': () => 'A frequency is above 0 MHz.',
  'frequency-too-low': ({ khz, lowestKhz }) =>
    `${mhz(khz)} is below ${mhz(lowestKhz)}. Type MHz, as 606.250.`,
  'frequency-too-high': ({ khz, highestKhz }) =>
    `${mhz(khz)} is above ${mhz(highestKhz)}. Did you type kHz? Type MHz, as 606.250.`,
  'frequency-outside-ranges': ({ khz }) => `${mhz(khz)} is outside where these packs tune.`,
  'frequency-off-raster': ({ khz }) => `${mhz(khz)} is between the tuning steps of these packs.`,
  'frequency-taken': ({ khz }) => `${mhz(khz)} is taken already.`,
  'carrier-named-twice': () => 'Two frequencies have the same name inside. Delete one of them.',
  'carrier-unknown': () => 'That carrier is not in the plan.',
  'carriers-too-many': ({ count, most }) =>
    `${count} carriers are more than can be worked out at once; ${most} is the most. Switch some off.`,
  'guard-unusable': ({ mostKhz }) => `A distance is whole kHz from 0 to ${plain(mostKhz)}.`,
  'spacing-unusable': ({ mostKhz }) => `A spacing is whole kHz from 0 to ${plain(mostKhz)}.`,
  'range-upside-down': ({ fromKhz, toKhz }) =>
    `${mhz(fromKhz)} is above ${mhz(toKhz)}: put the lower frequency first.`,
  'range-too-wide': ({ mostKhz }) => `A range is at most ${plain(mostKhz / 1000)} MHz wide.`,
  'raster-unusable': () => 'A tuning step is a whole number of kHz, 1 or more.',
  'ranges-missing': () => 'First enter where these packs can be tuned.',
  'band-without-ends': () => 'A range needs both ends, in MHz.',
  'count-unusable': ({ most }) => `Between 1 and ${most} packs at once, please.`,
  'no-clean-set': ({ count, proven }) =>
    proven
      ? `There is no clean set of ${count} in these ranges at this minimum spacing.`
      : `No clean set of ${count} was found in the time given. Widen the ranges or reduce a minimum spacing.`,
  'tv-channel-unknown': ({ channel }) => `There is no TV channel ${channel} at this channel width.`,
  'pages-not-made': () =>
    'The pages could not be made. Open the app once with a signal, and look here again.',
  'search-failed': () => 'The search could not run on this phone. Type frequencies; hits are still shown.',

  'clock-time-unread': ({ typed }) =>
    `${quoted(typed)} is not a time of day. Type hours and minutes, as 13:30.`,
  'jam-from-itself': () => 'A device cannot be jammed from itself.',
  'jam-after-now': () => 'Jammed later than now: the clocks of two phones differ.',
  'no-runtime': () => 'Its battery life is not set.',
  'no-tolerance': () => 'The tolerance of its clock is not set, so its drift is not known.',
  'source-without-tolerance': () =>
    'The tolerance of a clock its timecode came from is not set, so its drift is not known.',
  'card-without-size': () => 'Enter the size of the card.',
  'card-over-full': () => 'More is on the card than fits on it.',
  'run-without-type': () => 'Choose what kind of run it is.',
  'no-such-class': ({ class: id }) => `There is no power class ${id}.`,
  'unknown-gauge': ({ awg }) => `AWG ${awg} is not in the wire table: 10 to 22, even numbers.`,
  'load-beyond-lead': ({ mostWatts }) =>
    `This lead cannot carry that load at all; ${plain(mostWatts)} W is the most.`,
  'device-below-minimum': ({ volts, deviceMinVolts }) =>
    `It needs ${plain(deviceMinVolts)} V and gets ${plain(volts)} V: it may not run at all.`,
  'current-beyond-lead': ({ mostAmps }) =>
    `This lead cannot carry that current at all; ${plain(mostAmps)} A is the most.`,
  'packet-too-large': ({ mostChannels }) =>
    `So many channels do not fit one packet; ${mostChannels} is the most with this packet time.`,
  'no-cord-rating': ({ awg }) => `No cord rating is known for AWG ${awg}.`,
  'snake-too-short': ({ count, first }) =>
    `${count} leads from circuit ${first} on are more than a snake of eight has.`,
  'no-such-circuit': ({ circuit }) => `A snake has circuits 1 to 8, not ${circuit}.`,
  'circuit-used-twice': ({ snake, circuit, leads }) =>
    `Circuit ${circuit} of snake ${snake} is used by leads ${leads.join(' and ')}.`,
  'input-reached-twice': ({ input, leads }) =>
    `${input} is reached by leads ${leads.join(' and ')} without a selector between.`,
  'different-sources': () => 'They were jammed from different devices, so they cannot be compared.',
  'not-user-bits': ({ text }) => `${quoted(text)} are not user bits: eight digits, 0 to 9 and A to F.`,
  'not-a-zone-code': ({ zoneCode }) =>
    `${quoted(zoneCode)} is not a zone code: two digits, 0 to 9 and A to F.`,
  'not-a-date': () => 'The day has no date yet.',
};

export const sentenceFor = (problem: Problem): string =>
  (SENTENCES[problem.code] as (problem: Problem) => string)(problem);
