import type { TrackState } from '../../day/answers/track-answers.ts';
import { takeText } from '../../day/slate.ts';
import { cleanLine } from '../clean-text.ts';
import { FIRST_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import type { ReportHead, ReportModel } from '../model.ts';
import { NO_ROLL } from '../rolls.ts';
import type { NoteLine, Status, TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';
import { cardText } from './card-words.ts';
import { bytesText, counted, durationText } from './figures.ts';
import {
  crewText,
  listenersText,
  micsText,
  tapsText,
  timecodeSourceText,
  toneText,
  unitsText,
} from './head-words.ts';
import { alikeText, recorderLines, settingText } from './recorder-words.ts';

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
  'main-unit': 'main unit',
  'second-unit': 'second unit',
  'splinter-unit': 'splinter unit',
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

/** A note with its track, if any: `'track 5: rustle'`, `'track 5 of Bag: rustle'`, `'plane at the end'`. */
export const noteText = ({
  number,
  recorder,
  text,
}: Pick<NoteLine, 'number' | 'recorder' | 'text'>): string =>
  number === null
    ? text
    : `track ${isolated(number)}${recorder ? ` of ${isolated(recorder)}` : ''}: ${isolated(text)}`;

/** `'7A, 7B'`, `'7A; 2 takes with no roll'`. */
const rollsWords = ({ rolls, takesWithoutRoll }: ReportHead): string =>
  [
    rolls.join(', '),
    ...(takesWithoutRoll > 0 ? [`${counted(takesWithoutRoll, 'take')} with ${NO_ROLL}`] : []),
  ].join('; ');

/** The head of the report as label and text, in order, without empty fields. */
export function headLines(head: ReportHead): (readonly [label: string, text: string])[] {
  const all: (readonly [string, string])[] = [
    ['Production', head.production],
    ['Day', head.label],
    ['Date', head.date],
    [head.rolls.length > 1 ? 'Rolls' : 'Roll', rollsWords(head)],
    ['Unit', head.unit],
    ['Units', unitsText(head)],
    ['Mixer', crewText(head.mixer, head.mixerContact)],
    ['Boom', crewText(head.boom, head.boomContact)],
    ['Utility', crewText(head.utility, head.utilityContact)],
    ['Contact', head.contact],
    ...recorderLines(head),
    ['Sample rate', settingText(head, 'sampleRate')],
    ['Bit depth', settingText(head, 'bitDepth')],
    ['Timecode', settingText(head, 'timecodeRate')],
    ['Timecode source', timecodeSourceText(head)],
    ['Files', settingText(head, 'fileLayout')],
    ['File names', alikeText(head)],
    ['Reference tone', toneText(head)],
    ['Faders', tapsText(head)],
    ['Mics', micsText(head)],
    ['Listeners', listenersText(head)],
    ['Remarks', head.remarks],
  ];
  return all.filter(([, text]) => text !== '');
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

/** What each recorder wrote, a line each: `'Cart: 18 files, 2.31 GB on tracks in use'`. */
const writtenText = (written: ReportModel['written']): string =>
  written
    .map(({ name, totals }) => {
      const atLeast = totals.withoutLength > 0 ? 'at least ' : '';
      return `${isolated(name)}: ${filesText(totals)}, ${atLeast}${soundText(totals.written)}`;
    })
    .join('\n');

export function totalsLines({
  form,
  totals,
  written,
  card,
}: Pick<ReportModel, 'form' | 'totals' | 'written' | 'card'>): (readonly [label: string, text: string])[] {
  const { takes, circled, files, recordedMs, withoutLength, longest, bytes } = totals;
  const atLeast = withoutLength > 0 ? 'at least ' : '';
  const named = (take: string): string => (form === FIRST_FORM ? take : isolated(take));
  return [
    [
      'Takes',
      written.length > 0
        ? `${takes}, ${circled} circled`
        : `${takes}, ${circled} circled, ${form === FIRST_FORM ? counted(files, 'file') : filesText(totals)}`,
    ],
    ['Recorded', `${atLeast}${durationText(recordedMs)}`],
    ...(longest
      ? [['Longest', `${named(cleanLine(takeText(longest.take)))}, ${durationText(longest.ms)}`] as const]
      : []),
    ...(written.length > 0
      ? [['Sound', writtenText(written)] as const]
      : [
          [
            'Sound',
            `${atLeast}${form === FIRST_FORM ? bytesText(bytes) : soundText(totals.written)}`,
          ] as const,
        ]),
    ...(card ? [['Card', cardText(card)] as const] : []),
  ];
}
