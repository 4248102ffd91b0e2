import { describe, expect, test } from 'vitest';
import { cleanLine, cleanNote } from '../../../src/report/clean-text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { bytesText, counted, durationText } from '../../../src/report/printed/figures.ts';
import { matterText } from '../../../src/report/printed/matter-words.ts';
import { namesText } from '../../../src/report/printed/names-text.ts';
import { printedTake } from '../../../src/report/printed/printed-take.ts';
import { reportFileName, reportSubject } from '../../../src/report/printed/report-name.ts';
import {
  headLines,
  noteText,
  STATE_WORDS,
  STATUS_WORDS,
  statusWords,
  totalsLines,
  trackText,
} from '../../../src/report/printed/words.ts';
import { FIRST_LETTER } from '../../../src/report/revision/revision.ts';
import { stayingInOrder } from '../../../src/report/revision/take-changes.ts';
import { bitDepthWords, rateWords, sampleRateWords } from '../../../src/report/setting-words.ts';
import { STATUSES } from '../../../src/report/take-lines.ts';
import type { TrackLine } from '../../../src/report/track-lines.ts';
import { speaker } from '../../day/say.ts';
import { smallDay } from '../report-day.ts';

describe('words of a track', () => {
  const line = (more: Partial<TrackLine>): TrackLine => ({
    track: 'tr5',
    number: '5',
    name: 'Ines',
    state: 'single',
    typed: false,
    voices: [{ voice: 'ines', name: 'Ines', muted: false }],
    ...more,
  });
  const two = [
    { voice: 'ines', name: 'Ines', muted: false },
    { voice: 'dora', name: 'Dora', muted: true },
  ];

  test.each<[string, Partial<TrackLine>]>([
    ['Ines', {}],
    ['Ines (muted)', { state: 'muted', voices: [{ voice: 'ines', name: 'Ines', muted: true }] }],
    ['Ines, Dora (Dora muted)', { name: 'Ines, Dora', voices: two }],
    ['Ines, Dora (ganged)', { name: 'Ines, Dora', state: 'gang', voices: [] }],
    ['Ines, Dora (clash; Dora muted)', { name: 'Ines, Dora', state: 'clash', voices: two }],
    ['Door (typed by hand: Ines)', { name: 'Door', typed: true }],
    ['Door (typed by hand; nobody)', { name: 'Door', typed: true, state: 'empty', voices: [] }],
    ['Door (typed by hand: Ines, Dora; Dora muted)', { name: 'Door', typed: true, voices: two }],
    ['Mix', { name: 'Mix', state: 'mix', voices: [] }],
    ['Left (typed by hand)', { name: 'Left', state: 'mix', typed: true, voices: [] }],
  ])('%s', (text, more) => {
    expect(trackText(line(more))).toBe(text);
  });

  test('have one for every state', () => {
    expect(STATE_WORDS).toEqual({
      mix: 'mix',
      empty: 'nobody',
      single: '',
      gang: 'ganged',
      clash: 'clash',
      muted: 'muted',
    });
  });
});

describe('words of a take', () => {
  test('have one for every status, in the order they are printed', () => {
    expect(STATUSES.map((status) => STATUS_WORDS[status])).toEqual([
      'NG',
      'false start',
      'pickup',
      'wild track',
      'room tone',
      'MOS',
      'tail slate',
      'main unit',
      'second unit',
      'splinter unit',
      'still rolling',
      'no start',
      'no length',
      'file missing',
    ]);
    expect(statusWords({ circled: true, status: ['no-good', 'tail-slate'] })).toEqual([
      'circled',
      'NG',
      'tail slate',
    ]);
  });

  test('say the scene where the slate does not begin with it', () => {
    const [first] = reportOf(smallDay().phone.day()).takes;
    expect(printedTake(first!).words).toEqual([]);
    expect(printedTake({ ...first!, scene: '24', text: '118/4' }).words).toEqual(['scene 24']);
    expect(printedTake({ ...first!, scene: '', text: '118/4' }).words).toEqual([]);
    expect(printedTake({ ...first!, file: '' }).file).toBe('no file');
  });

  test('of a note say its track', () => {
    expect(noteText({ number: '5', recorder: '', text: 'rustle' })).toBe('track 5: rustle');
    expect(noteText({ number: '5', recorder: 'Bag', text: 'rustle' })).toBe('track 5 of Bag: rustle');
    expect(noteText({ number: null, recorder: '', text: 'plane' })).toBe('plane');
  });
});

describe('words of what is not settled', () => {
  const names = (count: number) => Array.from({ length: count }, (_, at) => `24B/${at + 1}`);

  test.each([
    [0, ''],
    [1, '24B/1'],
    [4, '24B/1, 24B/2, 24B/3, 24B/4'],
    [5, '24B/1, 24B/2, 24B/3 and 2 more'],
    [12, '24B/1, 24B/2, 24B/3 and 9 more'],
  ])('name %i takes as %j', (count, text) => {
    expect(namesText(names(count))).toBe(text);
  });

  test.each([
    [{ code: 'facts-unknown', count: 3 }, '3 entries were made by a newer version and are missing here.'],
    [{ code: 'take-open', names: names(1) }, '24B/1 has no cut.'],
    [{ code: 'take-open', names: names(2) }, '24B/1, 24B/2 have no cut.'],
    [{ code: 'takes-without-start', names: names(1) }, 'No start time: 24B/1.'],
    [{ code: 'takes-without-length', names: names(2) }, 'No length: 24B/1, 24B/2.'],
    [{ code: 'takes-numbered-twice', names: ['24B/1', '24B/1', '24B/1'] }, '24B/1 was logged 3 times.'],
    [{ code: 'takes-numbered-twice', names: ['24B/1'] }, '24B/1 was logged twice.'],
    [{ code: 'files-named-twice', file: 'A.wav', names: names(2) }, 'A.wav is the file of 24B/1, 24B/2.'],
    [
      { code: 'clash', number: '5', name: 'Ines, Dora', names: names(1) },
      'Track 5: Ines, Dora on one track, not declared a gang: 24B/1.',
    ],
    [
      { code: 'clash-on-input', name: 'in 3', names: names(1) },
      'Two voices on in 3, which feeds no track: 24B/1.',
    ],
    [{ code: 'voice-unrecorded', name: 'Ines', names: names(1) }, 'Ines was on no track: 24B/1.'],
    [
      { code: 'name-typed-over', number: '5', name: 'Door', on: '', names: names(1) },
      'Track 5 is named Door by hand, but nobody was on it: 24B/1.',
    ],
    [{ code: 'roll-used', text: 'Roll 7A is that of day 3.' }, 'Roll 7A is that of day 3.'],
    [{ code: 'roll-used-twice' }, 'Not settled: roll used twice.'],
  ])('%j', (matter, text) => {
    expect(matterText(matter)).toBe(text);
  });
});

describe('words of figures', () => {
  test.each([
    [0, '0 bytes'],
    [999, '999 bytes'],
    [1000, '1.00 kB'],
    [1_440_000, '1.44 MB'],
    [999_499, '999 kB'],
    [999_999, '1.00 MB'],
    [999_999_999_999, '1.00 TB'],
    [12_345_678_901, '12.3 GB'],
    [4e12, '4.00 TB'],
    [412e12, '412 TB'],
  ])('%i bytes are %s', (bytes, text) => {
    expect(bytesText(bytes)).toBe(text);
  });

  test.each([
    [0, '0:00'],
    [499, '0:00'],
    [500, '0:01'],
    [59_499, '0:59'],
    [59_500, '1:00'],
    [3_730_000, '1:02:10'],
  ])('%i ms are %s', (ms, text) => {
    expect(durationText(ms)).toBe(text);
  });

  test('count one and many, and name rates and depths', () => {
    expect([counted(0, 'take'), counted(1, 'take'), counted(2, 'take'), counted(2, 'box', 'boxes')]).toEqual([
      '0 takes',
      '1 take',
      '2 takes',
      '2 boxes',
    ]);
    expect([sampleRateWords(48_000), sampleRateWords(44_100)]).toEqual(['48 kHz', '44.1 kHz']);
    expect([bitDepthWords('24'), bitDepthWords('32f')]).toEqual(['24 bit', '32 bit float']);
    expect([rateWords('25'), rateWords('29.97'), rateWords('29.97DF')]).toEqual([
      '25 fps',
      '29.97 fps',
      '29.97 fps drop-frame',
    ]);
  });

  test('of the totals say at least where a length is not known, and what the card showed', () => {
    const model = reportOf(smallDay().phone.day());
    const said = { by: '', atMs: 0, zone: 120, files: 1, recordings: 1, open: 2 };
    const card = { ...said, takes: null, without: [], unsure: [], has: [] };
    const totals = { ...model.totals, withoutLength: 1, longest: null };
    expect(totalsLines({ ...model, totals, card })).toEqual([
      ['Takes', '6, 2 circled, 5 files'],
      ['Recorded', 'at least 1:40'],
      ['Sound', 'at least 47.5 MB on tracks in use'],
      ['Card', 'checked against 1 file, 2 open'],
    ]);
  });
});

describe('the head and the name of a report', () => {
  const said = (fields: object) => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields });
    return reportOf(phone.day());
  };

  test('have everything that was said, in order', () => {
    const model = said({
      ...{ production: 'Salt Road', label: 'day 7', date: '2026-10-07', unit: 'main', mixer: 'N. Aske' },
      ...{ boom: 'Iva', utility: 'Ada', contact: 'x@example.org', recorder: 'Bag', remarks: 'Wind' },
      ...{ fileLayout: 'mono', sampleRate: 96_000, bitDepth: '16', timecodeRate: '24' },
    });
    expect(headLines({ ...model.head, rolls: ['7A'] })).toEqual([
      ['Production', 'Salt Road'],
      ['Day', 'day 7'],
      ['Date', '2026-10-07'],
      ['Roll', '7A'],
      ['Unit', 'main'],
      ['Mixer', 'N. Aske'],
      ['Boom', 'Iva'],
      ['Utility', 'Ada'],
      ['Contact', 'x@example.org'],
      ['Recorder', 'Bag'],
      ['Sample rate', '96 kHz'],
      ['Bit depth', '16 bit'],
      ['Timecode', '24 fps'],
      ['Files', 'one mono file a track'],
      ['Remarks', 'Wind'],
    ]);
    expect(headLines({ ...model.head, rolls: ['7A', '7B'] })[3]).toEqual(['Rolls', '7A, 7B']);
  });

  test('name the day, or its date, and its letter', () => {
    expect(reportSubject(said({ production: 'Salt Road', label: 'day 7', date: '2026-10-07' }))).toBe(
      'Salt Road day 7',
    );
    expect(reportSubject(said({ production: 'Salt Road', date: '2026-10-07' }))).toBe('Salt Road 2026-10-07');
    expect(reportFileName(said({ label: 'day 7' }), 'pdf')).toBe('day 7 sound report.pdf');
    expect(reportFileName(said({ label: 'day 7' }), 'plain', 'B')).toBe('day 7 sound report B.csv');
    expect(reportFileName(said({ label: 'day 7' }), 'csv', 'B')).toBe('day 7 sound report B own columns.csv');
    expect(reportFileName(said({}), 'txt')).toBe('sound report.txt');
    const long = said({ production: '🎧'.repeat(61) });
    expect(reportFileName(said({ production: 'x'.repeat(61) }), 'eml', 'B')).toBe(
      `${'x'.repeat(60)} sound report B.eml`,
    );
    expect(reportFileName(long, 'html')).toMatch(/^(🎧)+\.html$/u);
    expect(FIRST_LETTER).toBe('A');
  });
});

describe('clean text', () => {
  test.each([
    ['plain', 'plain'],
    ['Zoë of the Mill', 'Zoë of the Mill'],
    ['  two  blanks ', 'two blanks'],
    ['tab\tand\u00a0more', 'tab and more'],
    ['a\u202eb\u2066c\u2069d', 'abcd'],
    ['a\u0000b\u007fc\u009fd\ufeffe', 'abcde'],
    ['one\r\ntwo\u2028three\u0085four\u000bfive', 'one two three four five'],
    ['\u05d0\u200f\u05d1', '\u05d0\u200f\u05d1'],
    ['half \ud800', 'half'],
    ['音声', '音声'],
    ['', ''],
  ])('%j is the line %j', (text, line) => {
    expect(cleanLine(text)).toBe(line);
  });

  test.each([
    ['one \r\n two', 'one\n two'],
    ['a\n\n\n\nb', 'a\n\nb'],
    ['a\n\nb', 'a\n\nb'],
    ['\n a\tb \n', 'a b'],
    ['a\u000cb\u2029c', 'a\nb\nc'],
  ])('%j is the note %j', (text, note) => {
    expect(cleanNote(text)).toBe(note);
  });
});

describe('what stays in order', () => {
  test.each([
    [[], []],
    [[0], [0]],
    [
      [0, 1, 2],
      [0, 1, 2],
    ],
    [[2, 1, 0], [2]],
    [
      [0, 2, 3, 1],
      [0, 1, 2],
    ],
    [
      [3, 0, 1, 4, 2],
      [1, 2, 4],
    ],
  ])('of %j are the places %j', (ranks, places) => {
    expect([...stayingInOrder(ranks)].sort((a, b) => a - b)).toEqual(places);
  });
});
