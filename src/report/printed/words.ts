import type { TrackState } from '../../day/answers/track-answers.ts';
import { takeText } from '../../day/slate.ts';
import { cleanLine } from '../clean-text.ts';
import { FIRST_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import type { ReportHead, ReportModel } from '../model.ts';
import type { OnRecorder, RecorderRun } from '../recorders.ts';
import { NO_ROLL } from '../rolls.ts';
import { runsText } from '../setting-runs.ts';
import type { Status, TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';
import { cardText } from './card-words.ts';
import { bytesText, counted, durationText } from './figures.ts';

/** How a track is used, in a word; empty for a single voice. */
export const STATE_WORDS: Record<TrackState, string> = {
  mix: 'mix',
  empty: 'nobody',
  single: '',
  gang: 'ganged',
  clash: 'clash',
  muted: 'muted',
};

export const STATUS_WORDS: Record<Status, string> = {
  'no-good': 'NG',
  'false-start': 'false start',
  pickup: 'pickup',
  wild: 'wild track',
  tone: 'room tone',
  mos: 'MOS',
  'tail-slate': 'tail slate',
  rolling: 'still rolling',
  'no-start': 'no start',
  'no-length': 'no length',
  'file-missing': 'file missing',
};

/** `['circled', 'NG', 'tail slate']`. */
export const statusWords = ({ circled, status }: Pick<TakeLine, 'circled' | 'status'>): string[] => [
  ...(circled ? ['circled'] : []),
  ...status.map((one) => STATUS_WORDS[one]),
];

/** `'Ines'`, `'Pol, Sana (ganged)'`, `'Tomas (muted)'`, `'Ines, Dora (Dora muted)'`, `'Door (typed by hand: Ines)'`, `'Ines (Ines twice)'`. */
export function trackText({ name, state, typed, voices }: TrackLine): string {
  const on = typed ? voices.map((voice) => isolated(voice.name)).join(', ') : '';
  const muted = state === 'muted' ? [] : voices.filter((voice) => voice.muted);
  const remarks = [
    typed && (on ? `typed by hand: ${on}` : 'typed by hand'),
    state !== 'mix' && STATE_WORDS[state],
    ...muted.map((voice) => `${isolated(voice.name)} muted`),
    ...voices.filter(({ twice }) => twice).map((voice) => `${isolated(voice.name)} twice`),
  ].filter(Boolean);
  return remarks.length > 0 ? `${isolated(name)} (${remarks.join('; ')})` : isolated(name);
}

/** `'5 Lena'`, `'16 Pol, Sana (ganged)'`; a mix needs no further word: `'Mix L'`. */
export function trackUnit(line: TrackLine): string {
  const text = trackText(line);
  return text === 'Mix' && /mix/i.test(line.number) ? line.number : `${isolated(line.number)} ${text}`;
}

/** A note with its track, if any: `'track 5: rustle'`, `'plane at the end'`. */
export const noteText = ({
  number,
  text,
}: {
  readonly number: string | null;
  readonly text: string;
}): string => (number === null ? text : `track ${isolated(number)}: ${isolated(text)}`);

/** `'7A, 7B'`, `'7A; 2 takes with no roll'`. */
const rollsWords = ({ rolls, takesWithoutRoll }: ReportHead): string =>
  [
    rolls.join(', '),
    ...(takesWithoutRoll > 0 ? [`${counted(takesWithoutRoll, 'take')} with ${NO_ROLL}`] : []),
  ].join('; ');

/** `'Cart'`, `'Backup (roll B1)'`. The roll of the first of a take's recorders is the take's own. */
export const onRecorderWords = ({ name, roll }: OnRecorder, at: number): string =>
  at > 0 && roll ? `${name} (roll ${roll})` : name;

/** Every recorder with the takes it has; a day with one recorder only names it. */
function recorderLines({ recorder, recorders }: ReportHead): (readonly [label: string, text: string])[] {
  if (recorders.length === 0) return [['Recorder', recorder]];
  return recorders.map((run, at) => [at === 0 ? 'Recorder' : `Recorder ${at + 1}`, runText(run)] as const);
}

/** `'Cart, all 14 takes'`, `'Backup, roll B1, 12 of 14 takes, not 24A/2, 24A/3'`. */
function runText({ name, rolls, has, of, without }: RecorderRun): string {
  if (of === 0) return name;
  const named = [isolated(name), ...rolls.map((roll) => `roll ${isolated(roll)}`)].join(', ');
  if (without.length === 0) return `${named}, all ${counted(of, 'take')}`;
  if (has === 0) return `${named}, no take`;
  return `${named}, ${has} of ${counted(of, 'take')}, not ${namesText(without)}`;
}

/** The head of the report as label and text, in order, without empty fields. */
export function headLines(head: ReportHead): (readonly [label: string, text: string])[] {
  const all: (readonly [string, string])[] = [
    ['Production', head.production],
    ['Day', head.label],
    ['Date', head.date],
    [head.rolls.length > 1 ? 'Rolls' : 'Roll', rollsWords(head)],
    ['Unit', head.unit],
    ['Mixer', head.mixer],
    ['Boom', head.boom],
    ['Utility', head.utility],
    ['Contact', head.contact],
    ...recorderLines(head),
    ['Sample rate', runsText(head.set.sampleRate)],
    ['Bit depth', runsText(head.set.bitDepth)],
    ['Timecode', runsText(head.set.timecodeRate)],
    ['Files', runsText(head.set.fileLayout)],
    ['Remarks', head.remarks],
  ];
  return all.filter(([, text]) => text !== '');
}

/** What editors must be told first: rates that are not the same all day. */
export const cautionLines = ({ set }: ReportHead): string[] =>
  [
    { runs: set.timecodeRate, what: 'timecode rate' },
    { runs: set.sampleRate, what: 'sample rate' },
  ]
    .filter(({ runs }) => runs.length > 1)
    .map(({ runs, what }) => `The ${what} changes during the day: ${runsText(runs)}.`);

const NAMED = 4;

/** `'24B/1, 24B/2'`; of more than four the first three and how many more. */
export function namesText(names: readonly string[]): string {
  const said = names.map(isolated);
  return said.length <= NAMED
    ? said.join(', ')
    : `${said.slice(0, NAMED - 1).join(', ')} and ${said.length - NAMED + 1} more`;
}

/** `'18 files'`, `'18 files named, 30 written for armed tracks'`. */
const filesText = ({ files, written }: ReportModel['totals']): string =>
  written.files === files
    ? counted(files, 'file')
    : `${counted(files, 'file')} named, ${written.files} written for armed tracks`;

const COUNTED: Record<ReportModel['totals']['written']['counting'], string> = {
  armed: 'on armed tracks',
  'in-use': 'on tracks in use',
  both: 'on armed tracks where known, else on tracks in use',
};

/** A recorder writes armed tracks, so the size of a card's files may differ: the words say what was counted. */
const soundText = ({ bytes, counting }: ReportModel['totals']['written']): string =>
  `${bytesText(bytes)} ${COUNTED[counting]}`;

export function totalsLines({
  form,
  totals,
  card,
}: Pick<ReportModel, 'form' | 'totals' | 'card'>): (readonly [label: string, text: string])[] {
  const { takes, circled, files, recordedMs, withoutLength, longest, bytes } = totals;
  const atLeast = withoutLength > 0 ? 'at least ' : '';
  const named = (take: string): string => (form === FIRST_FORM ? take : isolated(take));
  return [
    [
      'Takes',
      `${takes}, ${circled} circled, ${form === FIRST_FORM ? counted(files, 'file') : filesText(totals)}`,
    ],
    ['Recorded', `${atLeast}${durationText(recordedMs)}`],
    ...(longest
      ? [['Longest', `${named(cleanLine(takeText(longest.take)))}, ${durationText(longest.ms)}`] as const]
      : []),
    ['Sound', `${atLeast}${form === FIRST_FORM ? bytesText(bytes) : soundText(totals.written)}`],
    ...(card ? [['Card', cardText(card)] as const] : []),
  ];
}
