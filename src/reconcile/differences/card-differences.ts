import type { Recording, RecordingWarning } from '../../wave/recording/recordings.ts';
import { recordedOf } from '../log-and-card/recorded.ts';
import type { Checking } from './checking.ts';
import { DAMAGE, type Found } from './difference.ts';

/** What the card alone shows: recordings that overlap or were badly split, and oddities in files. */
export const cardDifferences = ({ match }: Checking): Found[] => [
  ...betweenRecordings(match.recordings, match.axis.at),
  ...match.recordings.flatMap((recording) => [
    ...recording.warnings.map((warning) => setWarning(recording, warning)),
    ...fileWarnings(recording),
  ]),
];

/** Ends and starts this close touch: writers round a sample either way. */
const TOUCHING_MS = 1;
/** Within this time the next recording is a continuation that the recorder split badly. */
const SPLIT_MS = 2000;

/** Only recordings of one known day and roll can overlap. */
function betweenRecordings(recordings: readonly Recording[], at: (ms: number) => number): Found[] {
  const timed = recordings
    .map(recordedOf)
    .flatMap(({ recording, startMs, lengthMs }) =>
      startMs === undefined || lengthMs === undefined
        ? []
        : [{ recording, from: at(startMs), to: at(startMs) + lengthMs }],
    )
    .sort((a, b) => a.from - b.from);
  const found: Found[] = [];
  const lastOf = new Map<string, Timed>();
  for (const next of timed) {
    const reel = reelOf(next.recording);
    const last = lastOf.get(reel);
    if (last) found.push(...between(last, next));
    if (!last || next.to >= last.to) lastOf.set(reel, next);
  }
  return found;
}

interface Timed {
  readonly recording: Recording;
  readonly from: number;
  readonly to: number;
}

/** Past midnight the date changes, and the roll does not. */
const reelOf = ({ tape, files }: Recording): string => tape ?? files[0]!.bext?.originationDate ?? '';

function between(last: Timed, next: Timed): Found[] {
  const apart = next.from - last.to;
  const isCopy = next.from === last.from && next.to === last.to;
  const was = last.recording.files[0]!.name;
  const both = { recording: next.recording, aspect: was, was, is: next.recording.files[0]!.name };
  if (apart < -TOUCHING_MS && !isCopy)
    return [{ code: 'recordings-overlap', ...both, detail: { ms: Math.round(-apart) } }];
  if (apart > TOUCHING_MS && apart < SPLIT_MS && isOneTake(last.recording, next.recording))
    return [{ code: 'recordings-gap', ...both, detail: { ms: Math.round(apart) } }];
  return [];
}

const isOneTake = (a: Recording, b: Recording): boolean =>
  a.scene !== undefined &&
  a.take !== undefined &&
  a.scene === b.scene &&
  a.take === b.take &&
  a.tape === b.tape;

function setWarning(recording: Recording, warning: RecordingWarning): Found {
  const named = { recording, aspect: 'after' in warning ? warning.after : undefined };
  switch (warning.code) {
    case 'set-incomplete':
      return { code: 'file-set-incomplete', ...named, was: warning.expected, is: warning.found };
    case 'set-lengths-differ':
      return { code: 'files-disagree', ...named, was: 'length', is: warning.lengths.map(String) };
    case 'set-values-differ':
      return {
        code: 'files-disagree',
        ...named,
        was: warning.field,
        is: warning.values,
        aspect: warning.field,
      };
    case 'parts-do-not-meet':
      return {
        code: warning.samples > 0 ? 'parts-gap' : 'parts-overlap',
        ...named,
        was: 0,
        is: Math.abs(warning.samples),
      };
    case 'file-twice':
      return { code: 'file-twice', ...named, was: recording.files[0]!.name, is: warning.names };
  }
}

/** Each kind of damage once for each file, any other warning once for all files of the recording. */
function fileWarnings(recording: Recording): Found[] {
  const all = recording.files.flatMap(({ name, warnings }) => warnings.map((warning) => ({ name, warning })));
  const groups = new Map<string, [(typeof all)[number], ...typeof all]>();
  for (const one of all) {
    const { code } = one.warning;
    const key = DAMAGE.has(code) ? `${code} ${one.name}` : code;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()].map((group): Found => {
    const [{ name, warning }] = group;
    const { code } = warning;
    const detail = { warning, count: group.length };
    const said = { recording, aspect: `${code} ${name}`, was: name, is: code, detail };
    return DAMAGE.has(code) ? { code: 'file-damaged', ...said } : { code: 'file-warning', ...said };
  });
}
