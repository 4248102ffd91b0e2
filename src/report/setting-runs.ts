import type { Settings } from '../day/settings/settings.ts';
import { bitDepthWords, layoutWords, rateWords, sampleRateWords } from './setting-words.ts';

/** The settings that a report prints. */
export const PRINTED_SETTINGS = ['sampleRate', 'bitDepth', 'timecodeRate', 'fileLayout'] as const;
export type PrintedSetting = (typeof PRINTED_SETTINGS)[number];

/** Settings that every editor must know of a take, where they are not the same all day. */
const OF_A_TAKE = ['timecodeRate', 'sampleRate', 'bitDepth'] as const;

/** A value, such as of a setting, and the takes in a row for which it held. */
export interface SettingRun {
  readonly text: string;
  /** What its first and its last take are called. */
  readonly from: string;
  readonly to: string;
}

/** Every setting of the day's takes: one run unless it changed. */
export type SettingRuns = { readonly [Field in PrintedSetting]: readonly SettingRun[] };

/** A take as far as its settings go. */
interface Set {
  readonly text: string;
  readonly kind: string;
  readonly set: Settings;
}

type InWords = { readonly [Field in PrintedSetting]: string };

/** Takes in a row share their settings, so these are put in words once. */
const inWords = new WeakMap<Settings, InWords>();

function wordsOf(field: PrintedSetting, set: Settings): string {
  const known = inWords.get(set);
  if (known) return known[field];
  const words: InWords = {
    sampleRate: sampleRateWords(set.sampleRate),
    bitDepth: bitDepthWords(set.bitDepth),
    timecodeRate: rateWords(set.timecodeRate),
    fileLayout: layoutWords(set.fileLayout),
  };
  inWords.set(set, words);
  return words[field];
}

/** A setup without sound is on no recorder, so its settings say nothing. */
const withSound = <Taken extends Set>(takes: readonly Taken[]): readonly Taken[] =>
  takes.filter(({ kind }) => kind !== 'mos');

/** The takes in a row of which the same is said. `named`: a take's name among other words. */
export function runsOf<Taken extends { readonly text: string }>(
  takes: readonly Taken[],
  said: (take: Taken) => string,
  named: (text: string) => string = (text) => text,
): SettingRun[] {
  const found: SettingRun[] = [];
  for (const take of takes) {
    const name = named(take.text);
    const text = said(take);
    const last = found.at(-1);
    if (last?.text === text) found[found.length - 1] = { ...last, to: name };
    else found.push({ text, from: name, to: name });
  }
  return found;
}

/** What a recorder was set to along the day; `now` if nothing was recorded yet. */
export function settingRuns(
  takes: readonly Set[],
  now: Settings,
  named?: (text: string) => string,
): SettingRuns {
  const recorded = withSound(takes);
  const runs = (field: PrintedSetting): SettingRun[] => {
    const found = runsOf(recorded, ({ set }) => wordsOf(field, set), named);
    return found.length > 0 ? found : [{ text: wordsOf(field, now), from: '', to: '' }];
  };
  return {
    sampleRate: runs('sampleRate'),
    bitDepth: runs('bitDepth'),
    timecodeRate: runs('timecodeRate'),
    fileLayout: runs('fileLayout'),
  };
}

/** `'25 fps'`, or `'25 fps to 24A/2; 23.976 fps from 24A/3'`. */
export function runsText(runs: readonly SettingRun[]): string {
  if (runs.length === 1) return runs[0]!.text;
  return runs
    .map(({ text, from, to }, at) => {
      if (at === 0) return `${text} to ${to}`;
      if (at === runs.length - 1) return `${text} from ${from}`;
      return from === to ? `${text} at ${from}` : `${text} from ${from} to ${to}`;
    })
    .join('; ');
}

/** What every editor must know of a recorder that is not set as the main one: `['24 fps']`. */
export const differingWords = (set: Settings, main: Settings): string[] =>
  OF_A_TAKE.map((field) => wordsOf(field, set)).filter(
    (words, at) => words !== wordsOf(OF_A_TAKE[at]!, main),
  );

/** Whether a setting was the same on all recorders at every take. */
export const isAlike = (
  field: PrintedSetting,
  takes: readonly (Set & { readonly recorders: readonly { readonly set: Settings }[] })[],
): boolean =>
  takes.every((take) => take.recorders.every(({ set }) => wordsOf(field, set) === wordsOf(field, take.set)));

export interface SettingWords {
  /** Rates and depth of the take, if they are not the same all day: `['23.976 fps']`. */
  readonly settingWords: readonly string[];
}

/** The takes with those settings in words that are not the same for all of them. */
export function withSettingWords<Taken extends Set>(takes: readonly Taken[]): (Taken & SettingWords)[] {
  const recorded = withSound(takes);
  const changing = OF_A_TAKE.filter(
    (field) => new Set(recorded.map(({ set }) => wordsOf(field, set))).size > 1,
  );
  return takes.map((take) => ({
    ...take,
    settingWords: take.kind === 'mos' ? [] : changing.map((field) => wordsOf(field, take.set)),
  }));
}
