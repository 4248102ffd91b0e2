export const WORD_MEANS: readonly (readonly [string, string])[] = [
  ['voice', 'Whatever is wanted on a track: a performer, a boom, a plant, a line feed.'],
  ['pack', 'The transmitter a performer wears.'],
  ['channel', 'One channel of a receiver; it is tuned to one pack.'],
  ['output', 'The connector by which a channel leaves its receiver.'],
  ['lead', 'A cable or a network route from an output, or from a boom, to an input.'],
  ['selector', 'A switch in front of an input: one of two leads reaches it.'],
  ['input, track', 'Of the recorder. An input feeds a track; the mix track has everyone.'],
  ['hardline', 'A mic that comes by a cable, with no pack.'],
  ['needed', 'Wanted in this setup. Whoever is not, or is wrapped for the day, can give a pack away.'],
  ['line', 'The day: takes, and the changes between them. A change can be put before an earlier take.'],
  ['setup, slate', 'The next camera position: 24, 24A, 24B. Take numbers start again at 1.'],
  ['circled', 'The take that is wanted. NG: no good. False start: gives its number back.'],
  ['pickup', 'A take that does not start at the top of the scene.'],
  ['wild track, room tone', 'Sound with no picture; each counts on its own.'],
  ['MOS', 'Picture with no sound: logged, no file.'],
  ['followed', 'The timecode shown is the phone’s clock, tied to the recorder by one tap on the clock.'],
  ['roll', 'The name of the sound roll or card; it goes on every take after it.'],
  ['wrap', 'The end of the day: the report goes out. A report sent again is a revision.'],
];

export const FIRST_STEPS: readonly (readonly [string, string])[] = [
  ['Rig', 'Describe the recorder, as “16 tracks, 4 mic, 8 slots”, or start from one of the rigs.'],
  ['Cast', 'Paste the cast lines of the call sheet. Tap a name, tap a pack.'],
  ['Now', 'Look who is on which track. What is wrong stands on top; tap it.'],
  ['The clock', 'Tap the timecode, and once more when the recorder shows the second named.'],
  ['Roll, Cut', 'The slate and take are filled in. Circle and note are beside them.'],
  ['Starting when?', 'Forgot to say it? Put the mark into an earlier gap; every take after it follows.'],
  ['Wrap', 'Send the report, and a copy of the day: only a copy survives a lost phone.'],
];

export const STARTING_WHEN =
  'Whatever you change holds from now on. If it was so earlier, move the mark before the first take it was true for: that take and all after it follow.';
