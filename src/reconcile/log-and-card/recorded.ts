import { compareText } from '../../wave/recording/recording-sets.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { type DayAxis, samplesMs } from './label-time.ts';
import { plainKey, slateKey, stemKey, stemOf, takeNumber } from './plain-key.ts';

/** A recording in a form that can be compared with takes. */
export interface Recorded {
  readonly recording: Recording;
  /** The file names, and what is left of them without a track or part mark. */
  readonly stems: ReadonlySet<string>;
  readonly shortStems: ReadonlySet<string>;
  readonly scene: string | undefined;
  readonly number: number | undefined;
  readonly roll: string | undefined;
  /** Of the file's first sample and of the button press; they differ by the pre-roll. */
  readonly startMs: number | undefined;
  readonly pressMs: number | undefined;
  /** From the first sample, pre-roll included. */
  readonly lengthMs: number | undefined;
  readonly preRollMs: number;
  readonly types: ReadonlySet<string>;
  /** The same for files whose tracks have the same names. */
  readonly trackKey: string;
}

/** What recorders append to a name: a track, a part of a split file, a copy's number. */
const MARK = /(?:[\s._-]+(?:TR?|CH|TRK|TRACK|PART)?\d{1,4}|[\s._-]+[A-Z]|\s*\(\d{1,3}\))$/;

export function recordedOf(recording: Recording): Recorded {
  const { files, scene, tape, start, length, sampleRate, takeTypes } = recording;
  const stems = new Set(files.map(({ name }) => stemKey(name)));
  const startMs = start && samplesMs(start.samples, start.sampleRate);
  const preRoll = sampleRate === undefined ? 0 : samplesMs(preRollSamples(recording), sampleRate);
  return {
    recording,
    stems,
    shortStems: new Set([...stems].map((stem) => stem.replace(MARK, '')).filter(Boolean)),
    scene: keyOrNone(scene, slateKey),
    number: takeNumber(recording.take),
    roll: keyOrNone(tape, slateKey),
    startMs,
    pressMs: startMs === undefined ? undefined : startMs + preRoll,
    lengthMs: sampleRate === undefined || length === 0 ? undefined : samplesMs(length, sampleRate),
    preRollMs: preRoll,
    types: new Set(takeTypes),
    trackKey: JSON.stringify(
      recording.tracks.map(({ channel, name, function: role }) => [channel, name, role]),
    ),
  };
}

/** The same, its first samples from before the button was pressed. */
export const withPreRoll = (recorded: Recorded, preRollMs: number): Recorded => ({
  ...recorded,
  preRollMs,
  pressMs: recorded.startMs === undefined ? undefined : recorded.startMs + preRollMs,
});

/** How much longer the recording is than the log says: from its first sample or the press, what is nearer. */
export function lengthApartMs(loggedMs: number, { lengthMs = loggedMs, preRollMs }: Recorded): number {
  const whole = lengthMs - loggedMs;
  const pressed = whole - preRollMs;
  return Math.abs(pressed) < Math.abs(whole) ? pressed : whole;
}

const keyOrNone = (text: string | undefined, key: (text: string) => string): string | undefined =>
  text === undefined ? undefined : key(text) || undefined;

/** Samples recorded before the button was pressed (iXML 3.01, PRE_RECORD_SAMPLECOUNT); 0 if missing. */
export function preRollSamples({ files, length }: Recording): number {
  const ixml = files[0]?.ixml;
  const point = ixml?.syncPoints.find((one) => one.function === 'PRE_RECORD_SAMPLECOUNT');
  const samples = point?.samples ?? ixml?.preRecordSamples ?? 0;
  return samples <= length ? samples : 0;
}

/**
 * One name for all files of a recording: the first file's, without the track or part mark if all files agree
 * on the rest. `24BT3_1.wav` and `24BT3_2.wav` are `24BT3.wav`.
 */
export function recordingName({ files }: Pick<Recording, 'files'>): string {
  const [name = ''] = fileNamesIn({ files });
  const stem = stemOf(name);
  const short = plainKey(stem).replace(MARK, '');
  const shared = files.length > 1 && files.every((file) => stemKey(file.name).replace(MARK, '') === short);
  const rest = stem.slice(0, short.length);
  // Case folding may change a length (ß is SS); then the name stays as it is.
  return shared && short !== '' && plainKey(rest) === short ? rest + name.slice(stem.length) : name;
}

/** The names of its files, without folders. */
export const fileNamesIn = ({ files }: Pick<Recording, 'files'>): string[] =>
  files.map(({ name }) => name.replace(/^.*[/\\]/s, ''));

/** By their starts if all have one; else by the date and time of day in the files, else by their names. */
export function inOrderOfRecording(recordings: readonly Recorded[], { at }: DayAxis): Recorded[] {
  const stampOf = ({ recording }: Recorded): string | undefined => {
    const { originationDate, originationTime } = recording.files[0]!.bext ?? {};
    return originationDate && originationTime && `${originationDate} ${originationTime}`;
  };
  const nameOf = ({ recording }: Recorded): string => recording.files[0]!.name;
  if (recordings.every(({ startMs }) => startMs !== undefined))
    return recordings.toSorted((a, b) => at(a.startMs!) - at(b.startMs!));
  const isStamped = new Set(recordings.map(stampOf)).size > recordings.length / 2;
  return recordings.toSorted(
    (a, b) =>
      (isStamped ? compareText(stampOf(a) ?? '', stampOf(b) ?? '') : 0) || byNumbers(nameOf(a), nameOf(b)),
  );
}

/** Text in which runs of digits count as numbers: REC_9 before REC_10. */
function byNumbers(a: string, b: string): number {
  const padded = (text: string): string => text.replaceAll(/\d+/g, (digits) => digits.padStart(12, '0'));
  return compareText(padded(a), padded(b)) || compareText(a, b);
}

/** By tape, start and name, whatever order the files came in. */
export const byTapeAndStart = (a: Recording, b: Recording): number =>
  compareText(a.tape ?? '', b.tape ?? '') ||
  (a.start?.samples ?? -1) - (b.start?.samples ?? -1) ||
  compareText(a.files[0]!.name, b.files[0]!.name) ||
  a.length - b.length ||
  compareText(JSON.stringify([a.scene, a.take, a.note]), JSON.stringify([b.scene, b.take, b.note]));
