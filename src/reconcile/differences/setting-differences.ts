import { type FilledHeader, filledHeader } from '../../day/header.ts';
import { BIT_DEPTHS, type HeaderFields, TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { commonest } from '../log-and-card/commonest.ts';
import { isMono } from '../log-and-card/file-marks.ts';
import type { Checking } from './checking.ts';
import type { DifferenceCode, Found } from './difference.ts';

interface Setting {
  readonly code: DifferenceCode;
  readonly ofDay: (header: FilledHeader) => string | number;
  readonly ofFile: (recording: Recording) => string | number | undefined;
  /** As a header field of the day; undefined if it cannot hold the value. */
  readonly field: (recording: Recording) => HeaderFields | undefined;
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
    ofDay: ({ sampleRate }) => sampleRate,
    ofFile: ({ sampleRate }) => sampleRate,
    field: ({ sampleRate: rate = 0 }) => (rate >= 8000 && rate <= 384_000 ? { sampleRate: rate } : undefined),
  },
  {
    code: 'bit-depth-differs',
    ofDay: ({ bitDepth }) => bitDepth,
    ofFile: bitDepthOf,
    field: (recording) => {
      const bitDepth = BIT_DEPTHS.find((one) => one === bitDepthOf(recording));
      return bitDepth && { bitDepth };
    },
  },
  {
    code: 'timecode-rate-differs',
    ofDay: ({ timecodeRate }) => timecodeRate,
    ofFile: ({ rate }) => rate,
    field: ({ rate }) => {
      const timecodeRate = TIMECODE_RATES.find((one) => one === rate);
      return timecodeRate && { timecodeRate };
    },
  },
  {
    code: 'file-layout-differs',
    ofDay: ({ fileLayout }) => fileLayout,
    ofFile: layoutOf,
    field: (recording) => {
      const fileLayout = layoutOf(recording);
      return fileLayout && { fileLayout };
    },
  },
];

/**
 * Sample rate, bit depth, timecode rate and layout that differ from the day's: one difference if all files
 * agree, else one each.
 */
export const settingDifferences = (checking: Checking): Found[] =>
  SETTINGS.flatMap((setting) => differencesIn(setting, checking));

function differencesIn({ code, ofDay, ofFile, field }: Setting, { day, match }: Checking): Found[] {
  const was = ofDay(filledHeader(day.header));
  const saying = match.recordings.filter((recording) => ofFile(recording) !== undefined);
  const differing = saying.filter((recording) => ofFile(recording) !== was);
  const values = new Set(saying.map(ofFile));
  const [first] = differing;
  if (!first) return [];
  const found = (recording: Recording): Found => ({ code, was, is: ofFile(recording)!, recording });
  if (values.size > 1) return differing.map(found);
  const fields = field(first);
  return [
    {
      code,
      was,
      is: ofFile(first)!,
      detail: { count: differing.length },
      settlements: fields ? [{ kind: 'describe-day', fields }] : [],
    },
  ];
}

/** The most common values of these settings, as header fields of a day. */
export const commonestSettings = (recordings: readonly Recording[]): HeaderFields =>
  Object.assign(
    {},
    ...SETTINGS.map(({ ofFile, field }) => {
      const value = commonest(recordings.map(ofFile));
      const saying = value === undefined ? undefined : recordings.find((one) => ofFile(one) === value);
      return saying && field(saying);
    }),
  );
