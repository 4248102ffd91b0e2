import type { TrackState } from '../../day/answers/track-answers.ts';
import { takeText } from '../../day/slate.ts';
import { formatSeconds } from '../../time/length.ts';
import { cleanLine } from '../clean-text.ts';
import { FIRST_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import type { ReportHead, ReportModel } from '../model.ts';
import type { Matter } from '../open-matters.ts';
import type { OnRecorder, RecorderRun } from '../recorders.ts';
import { NO_ROLL } from '../rolls.ts';
import { runsText } from '../setting-runs.ts';
import type { Status, TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';
import { cardText } from './card-words.ts';

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

/** One sentence for an open matter. A matter of another room may bring its own `text`. */
export function matterText(said: Matter): string {
  const matter = inIsolates(said);
  const takes = namesText(matter.names ?? []);
  const many = (matter.names?.length ?? 0) > 1;
  switch (matter.code) {
    case 'facts-unknown':
      return `${matter.count} entries were made by a newer version and are missing here.`;
    case 'words-unknown':
      return `What a newer version calls ${takes} is not known here, and nothing was worked out from it.`;
    case 'head-lacks':
      return `Not entered: ${takes}.`;
    case 'take-open':
      return `${takes} ${many ? 'have' : 'has'} no cut.`;
    case 'takes-without-start':
      return `No start time: ${takes}.`;
    case 'takes-without-length':
      return `No length: ${takes}.`;
    case 'takes-numbered-twice':
      return `${matter.names?.[0]} was logged ${many ? `${matter.names!.length} times` : 'twice'}.`;
    case 'files-named-twice':
      return `${fileOf(matter)} of ${takes}.`;
    case 'on-backup-only':
      return `Not on ${matter.name}, only on a backup: ${takes}.`;
    case 'clash':
      return `Track ${matter.number}: ${matter.name} on one track, not declared a gang: ${takes}.`;
    case 'clash-on-input':
      return `Two voices on ${matter.name}, which feeds no track: ${takes}.`;
    case 'voice-unrecorded':
      return `${matter.name} was on no track: ${takes}.`;
    case 'voice-pack-gone':
      return `${matter.name} gave up a pack and was on no track: ${takes}.`;
    case 'voice-muted':
      return `${matter.name} was needed but muted: ${takes}.`;
    case 'name-typed-over':
      return `Track ${matter.number} is named ${matter.name} by hand, but ${matter.on || 'nobody'} was on it: ${takes}.`;
    default:
      return typeof matter.text === 'string'
        ? matter.text
        : `Not settled: ${matter.code.replaceAll('-', ' ')}.`;
  }
}

/** Isolates typed text so that it can be part of a sentence. */
function inIsolates(matter: Matter): Matter {
  const typed = TYPED.flatMap((field): [string, string][] => {
    const said = matter[field];
    return typeof said === 'string' ? [[field, isolated(said)]] : [];
  });
  return { ...matter, ...Object.fromEntries(typed), names: matter.names?.map(isolated) ?? [] };
}

const TYPED = ['name', 'on', 'file', 'number'];

/** `'24BT3.wav is the file'`, `'24BT3_1.wav is a file'`, `'24BT3_1.wav and 3 more are files'`. */
const fileOf = ({ file, more, isOfSeveral }: Matter): string =>
  more ? `${file} and ${more} more are files` : `${file} is ${isOfSeveral ? 'a' : 'the'} file`;

/** `'1 take'`, `'2 takes'`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Decimal units, as cards are sold: `'1.44 MB'`, `'12.3 GB'`. */
export function bytesText(bytes: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB'];
  // By the printed digits: 999 999 bytes round to a thousand kB, which is 1.00 MB.
  const printed = Number(Math.max(1, bytes).toPrecision(3));
  const unit = Math.min(units.length - 1, Math.floor(Math.log10(printed) / 3));
  const value = bytes / 1000 ** unit;
  return `${unit === 0 ? value : value.toPrecision(3)} ${units[unit]}`;
}

/** `'0:07'`, `'1:02:10'`, to the nearest second. */
export const durationText = (ms: number): string => formatSeconds(Math.round(ms / 1000));

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
