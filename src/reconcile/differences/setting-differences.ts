import { setTo } from '../../day/chain/links.ts';
import type { FactId, PartId, TakeId } from '../../day/model.ts';
import { settingsBefore } from '../../day/settings/settings.ts';
import { placeOfTake } from '../../day/takes.ts';
import type { SettlementChoice } from '../../day/wrap/card-settlement.ts';
import { BIT_DEPTHS, TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import { FIRST_RECORDER, type RecorderSettings, type SettingField } from '../../facts/kinds/recorder-set.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { commonest } from '../log-and-card/commonest.ts';
import { isMono } from '../log-and-card/file-marks.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';

type SetRecorder = Extract<SettlementChoice, { kind: 'set-recorder' }>;

interface Setting {
  readonly code: `${'sample-rate' | 'bit-depth' | 'timecode-rate' | 'file-layout'}-differs`;
  readonly name: Exclude<SettingField, 'filePattern'>;
  readonly ofFile: (recording: Recording) => string | number | undefined;
  /** As a setting of the recorder; undefined if it cannot hold the value. */
  readonly field: (recording: Recording) => RecorderSettings | undefined;
}

/** `'24'`, `'32f'`. */
export const bitDepthOf = ({ bits, files }: Recording): string | undefined =>
  bits === undefined ? undefined : `${bits}${files[0]?.format?.float ? 'f' : ''}`;

/** A file with a single track may be of either layout. */
const layoutOf = (recording: Recording): 'mono' | 'poly' | undefined => {
  if (isMono(recording)) return 'mono';
  const { files } = recording.parts[0]!;
  return files.length === 1 && files[0]!.resolved.tracks.length > 1 ? 'poly' : undefined;
};

const SETTINGS: readonly Setting[] = [
  {
    code: 'sample-rate-differs',
    name: 'sampleRate',
    ofFile: ({ sampleRate }) => sampleRate,
    field: ({ sampleRate: rate = 0 }) => (rate >= 8000 && rate <= 384_000 ? { sampleRate: rate } : undefined),
  },
  {
    code: 'bit-depth-differs',
    name: 'bitDepth',
    ofFile: bitDepthOf,
    field: (recording) => {
      const bitDepth = BIT_DEPTHS.find((one) => one === bitDepthOf(recording));
      return bitDepth && { bitDepth };
    },
  },
  {
    code: 'timecode-rate-differs',
    name: 'timecodeRate',
    ofFile: ({ rate }) => rate,
    field: ({ rate }) => {
      const timecodeRate = TIMECODE_RATES.find((one) => one === rate);
      return timecodeRate && { timecodeRate };
    },
  },
  {
    code: 'file-layout-differs',
    name: 'fileLayout',
    ofFile: layoutOf,
    field: (recording) => {
      const fileLayout = layoutOf(recording);
      return fileLayout && { fileLayout };
    },
  },
];

/**
 * Sample rate, bit depth, timecode rate and layout that differ from what the recorder was set to: one
 * difference if all files that differ agree, else one each.
 */
export const settingDifferences = (checking: Checking): Found[] =>
  SETTINGS.flatMap((setting) => differencesIn(setting, checking));

function differencesIn(setting: Setting, checking: Checking): Found[] {
  const { code, field, ofFile } = setting;
  const { day, match, pairs, recorder } = checking;
  const takeOf = new Map(pairs.map(({ recording, take }) => [recording, take.id]));
  const wasOf = (recording: Recording): string | number =>
    settingsBefore(day, takeOf.get(recording), recorder)[setting.name];
  const saying = match.recordings.filter((recording) => ofFile(recording) !== undefined);
  const differing = saying.filter((recording) => ofFile(recording) !== wasOf(recording));
  const [first] = differing;
  if (!first) return [];
  const was = wasOf(first);
  const isSaid = isBesideFirst(recorder) || setTo(day.tail, setting.name);
  const changes = isSaid ? changesTo(setting, checking) : [];
  if (changes.length > 0) {
    const detail = { count: differing.length };
    return [
      {
        code,
        was,
        is: ofFile(first)!,
        detail,
        settlements: [{ kind: 'set-recorder', ...ofRecorder(recorder), changes }],
      },
    ];
  }
  const found = (recording: Recording): Found => ({
    code,
    was,
    is: ofFile(recording)!,
    recording,
    detail: { count: 1 },
  });
  if (new Set(saying.map(ofFile)).size > 1) return differing.map(found);
  const fields = field(first);
  return [
    {
      code,
      was,
      is: ofFile(first)!,
      detail: { count: differing.length },
      settlements: fields && !isBesideFirst(recorder) ? [{ kind: 'describe-day', fields }] : [],
    },
  ];
}

const isBesideFirst = (recorder: PartId | undefined): boolean =>
  recorder !== undefined && recorder !== FIRST_RECORDER;

/** Names a recorder only where it is not the first. */
export const ofRecorder = (recorder: PartId | undefined): { readonly recorder?: PartId } =>
  isBesideFirst(recorder) ? { recorder: recorder! } : {};

/** A setting for the whole day: of the first recorder in its header, of another from its first take on. */
export function settingAllDay({ pairs, recorder }: Checking, settings: RecorderSettings): SettlementChoice {
  const [first] = pairs;
  return isBesideFirst(recorder) && first
    ? { kind: 'set-recorder', recorder: recorder!, changes: [{ settings, before: first.take.id }] }
    : { kind: 'describe-day', fields: settings };
}

/** Where the line already says when the recorder was set otherwise: what to say so that it is as the files. */
function changesTo(
  { name, ofFile, field }: Setting,
  { day, pairs, recorder }: Checking,
): SetRecorder['changes'] {
  const inOrder = pairs.toSorted((a, b) => placeOfTake(day, a.take.id) - placeOfTake(day, b.take.id));
  const changes: { settings: RecorderSettings; before: TakeId }[] = [];
  let held: FactId | undefined;
  let value: string | number = settingsBefore(day, inOrder[0]?.take.id, recorder)[name];
  for (const { take, recording, answers } of inOrder) {
    const link = setTo(answers.links, name, recorder);
    // A change that follows on the line ends what is said here.
    if (link?.by !== held) value = settingsBefore(day, take.id, recorder)[name];
    held = link?.by;
    const is = ofFile(recording);
    const settings = is === undefined || is === value ? undefined : field(recording);
    if (!settings) continue;
    changes.push({ settings, before: take.id });
    value = is!;
  }
  return changes;
}

/** The most common values of these settings, as header fields of a day. */
export const commonestSettings = (recordings: readonly Recording[]): RecorderSettings =>
  Object.assign(
    {},
    ...SETTINGS.map(({ ofFile, field }) => {
      const value = commonest(recordings.map(ofFile));
      const saying = value === undefined ? undefined : recordings.find((one) => ofFile(one) === value);
      return saying && field(saying);
    }),
  );
