/** Riddles and words of a dialect that screens once used, and what took their place. */
export const NOT_SAID: readonly RegExp[] = [
  /^Words$/, // Help
  /take in a day/i, // Import day file
  /to play in/i, // practice day
  /held in/i, // Buttons for
  /dark set\b|\bdim\b/i, // Night
  /\bfollow(ed|ing)?\b (the recorder|from)|^followed$|\[followed/i, // synced to recorder
  /\btime of day\]|^time of day$/i, // clock not synced
  /no copy\b(?! \/ 1 copy)/i, // not backed up
  /\d+k \d+|\}k\b/, // 48 kHz · 24-bit
  /now it shows/i, // Tap when it reads
  /wait for this/i, // Use this timecode
  /unrecorded/i, // everyone recorded
  /take afterwards/i, // Log a missed take
  /call this slate/i, // Use this slate
  /one tap notes/i, // Quick notes
  /\btak(e|en) (the \w+ |it )?back\b/i, // Remove, or Undo
  /\bcorrect(ed|s)?\b/i, // Edit
  /from when\?|tap a gap/i, // Starting when?
  /type a name\b/i, // Own track name
  /battery rests/i, // take pack off
  /\bresting\b|^is done$|done for the day/i, // not in this setup, wrapped
  /moves? costs?\b/i, // what to avoid
  /accept\b/i, // Apply
  /(plug|tune) a block/i, // Patch several, Tune several
  /in a breath/i, // Describe the recorder
  /\blay(s|ing)?\b|\blaid\b/i, // use, set up
  /\bstr(ike|ikes|uck)\b/i, // Delete, or Remove
  /\bguards?\b|\brasters?\b/i, // Minimum spacing, Tuning step
  /a set for many/i, // Frequencies for several packs
  /\bcells?\b|\bruntimes?\b/i, // Battery life
  /is held against/i, // no meal or wrap warnings
  /heard again|open again|let it be heard/i, // Unmuted
  /say so\b/i, // Mark card checked
  /contradiction/i, // conflict
  /\banew\b|\bmend(s|ed)?\b/i,
  /head of the day|the day's head/i, // day details
  /\bnot said\b|nobody (has )?said|was said/i, // not set
  /^1 sources/,
];
