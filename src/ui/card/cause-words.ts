import type { Day } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import type { Cause, CauseKind, Way } from '../../reconcile/causes/causes.ts';
import type { Difference, DifferenceCode } from '../../reconcile/differences/difference.ts';
import { countOf } from '../words/chain.ts';
import { differenceWords, onRecorder } from './difference-words.ts';
import { warningWords } from './wave-warnings.ts';

/** What kind of trouble it is, in a word. */
export const KIND_WORDS: Record<CauseKind, string> = {
  sound: 'sound',
  people: 'people',
  rates: 'rates',
  numbers: 'numbers',
  names: 'names',
  notes: 'notes',
};

const takes = (count: number): string => countOf(count, 'take');
const files = (count: number): string => countOf(count, 'recording');

type Say = (count: number, first: Difference, takes: number) => string;

/** Several differences of one cause in one sentence; without one here, their first and how many more. */
const SENTENCES: Partial<Record<DifferenceCode, Say>> = {
  'take-not-recorded': (count) => `${takes(count)} logged, but not on the card`,
  'take-on-backup-only': (count) => `${takes(count)} only on recorders whose cards are not here`,
  'recording-not-logged': (count) => `${files(count)} not logged`,
  'match-unsure': (count) => `${takes(count)} with several files that fit`,
  'mos-recorded': (count) => `${takes(count)} logged as MOS, but the card has sound`,
  'file-damaged': (count, one) =>
    `${countOf(count, 'file')} damaged: ${one.code === 'file-damaged' ? warningWords(one.detail.warning) : ''}`,
  'file-warning': (count, one) =>
    `${files(count)}: ${one.code === 'file-warning' ? warningWords(one.detail.warning) : ''}`,
  'file-set-incomplete': (count) => `${files(count)} with files missing`,
  'track-name-differs': (_, one, all) =>
    `${one.was || 'Nobody'} is ${one.is || 'nobody'} on the card in ${takes(all)}`,
  'slate-differs': (count, one) => `Slate ${one.was} is ${one.is} on the card in ${takes(count)}`,
  'take-number-differs': (count, one) =>
    `${takes(count)} numbered ${Math.abs(Number(one.is) - Number(one.was))} ${Number(one.is) > Number(one.was) ? 'higher' : 'lower'} on the card`,
  'start-differs': (count) => `${takes(count)} with a different start`,
  'length-differs': (count) => `${takes(count)} with a different length`,
  'start-not-logged': (count) => `${takes(count)} with no start in the log`,
  'length-not-logged': (count) => `${takes(count)} with no length in the log`,
  'circled-differs': (count, one) =>
    `${takes(count)} circled ${one.is ? 'on the card only' : 'in the log only'}`,
  'take-type-differs': (count) => `${takes(count)} of a different kind on the card`,
  'file-name-differs': (count) => `${takes(count)} with other file names`,
  'note-not-logged': (count) => `${countOf(count, 'note')} on the card only`,
  'recordings-overlap': (count) => `${countOf(count, 'overlap')} between recordings`,
  'recordings-gap': (count) => `${countOf(count, 'gap')} between recordings of one take`,
  'file-twice': (count) => `${files(count)} on the card twice`,
};

export function causeWords(day: Day, { code, differences, takes: all }: Cause): string {
  const [first, ...more] = differences;
  if (more.length === 0) return differenceWords(day, first);
  const say = SENTENCES[code]?.(differences.length, first, all);
  if (say === undefined) return `${differenceWords(day, first)}, and ${more.length} more`;
  return say + onRecorder(day, first);
}

/** The first takes a cause is about. */
export function causeTakes(day: Day, { differences }: Cause): string {
  const known = differences.flatMap(({ take }) => (take ? (day.takes.get(take) ?? []) : []));
  const names = [...new Set(known.map(takeText))];
  return names.length > SHOWN
    ? `${names.slice(0, SHOWN).join(', ')} and ${names.length - SHOWN} more`
    : names.join(', ');
}

const SHOWN = 5;

const WAY_WORDS: Record<Way['kind'], (count: number) => string> = {
  'describe-takes': () => 'Use the card',
  'describe-day': () => 'Use the card’s setting',
  'set-recorder': () => 'Use the card’s setting',
  'correct-rolling': () => 'Use the card',
  'add-note': (count) => `Add ${countOf(count, 'note')}`,
  'change-roll': () => 'Use the card’s rolls',
  'name-track': () => 'Use the card’s names',
  'swap-tracks': () => 'Swap them as on the card',
  'move-changes': () => 'Move the changes earlier',
  'log-recording': (count) => `Log all ${count}`,
  'take-back': (count) => `Remove ${takes(count)}`,
  'follow-recorder': () => 'Sync to recorder again',
  'file-missing': (count) => (count === 1 ? 'File missing' : 'Files missing'),
  'keep-log': () => 'Keep the log',
};

export const wayWords = ({ kind, settlements }: Way): string => WAY_WORDS[kind](settlements.length);
