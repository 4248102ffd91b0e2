import { isMixByWord, isNumber } from '../../day/files/track-labels.ts';
import type { Part, PartId } from '../../day/model.ts';
import type { Recording, RecordingTrack } from '../../wave/recording/recordings.ts';
import { plainKey } from './plain-key.ts';

type FileTracks = ReadonlyMap<PartId, RecordingTrack> | null;

const remembered = new WeakMap<Recording, Map<readonly Part[], FileTracks>>();

/**
 * Which track of the recording each track of the recorder is; null if the files do not say. CHANNEL_INDEX is
 * the number on the machine (iXML 3.01); without it, by position if there are equally many.
 *
 * Remembered: a recording is compared with every take that it could be of.
 */
export function fileTracksOf(tracks: readonly Part[], recording: Recording): FileTracks {
  const known = remembered.get(recording) ?? new Map<readonly Part[], FileTracks>();
  remembered.set(recording, known);
  const before = known.get(tracks);
  if (before !== undefined) return before;
  const made = foundIn(tracks, recording);
  known.set(tracks, made);
  return made;
}

function foundIn(tracks: readonly Part[], recording: Recording): FileTracks {
  const numbered = recording.tracks.filter(({ channel }) => channel !== undefined);
  if (numbered.length > 0) return byChannel(tracks, numbered);
  const isNamed = recording.tracks.some(({ name }) => name !== undefined);
  if (!isNamed || recording.tracks.length !== tracks.length) return null;
  return found(tracks, (_, at) => recording.tracks[at]);
}

function byChannel(tracks: readonly Part[], files: readonly RecordingTrack[]): Map<PartId, RecordingTrack> {
  const isMix = isMixOf(tracks);
  const at = (channel: number) => files.findLast((file) => file.channel === channel);
  const numberOf = ({ name }: Part, place: number): number => (isNumber(name) ? Number(name) : place + 1);
  const numbers = new Set(tracks.filter(({ name }) => isNumber(name)).map(({ name }) => Number(name)));
  const isTaken = (track: Part, place: number): boolean => isMixByWord(track) && numbers.has(place + 1);
  // No mix named by a word is at a position whose number another track has.
  if (!tracks.some(isTaken)) return found(tracks, (track, place) => at(numberOf(track, place)));
  if (countsPlaces(files, numbers, isMix)) return found(tracks, (_, place) => at(place + 1));
  const isos = files.filter((file) => !isMix(file));
  const mixes = files.filter(isMix);
  return found(tracks, (track, place) =>
    isMixByWord(track)
      ? mixes.find(({ name }) => isWord(name, track.name))
      : isos.findLast(({ channel }) => channel === numberOf(track, place)),
  );
}

/** If the channel with an iso's number is a mix, the numbers are positions. */
const countsPlaces = (
  files: readonly RecordingTrack[],
  numbers: ReadonlySet<number>,
  isMix: (file: RecordingTrack) => boolean,
): boolean =>
  new Set(files.map(({ channel }) => channel)).size === files.length &&
  files.some((file) => numbers.has(file.channel!) && isMix(file));

/** Whether a file's track is marked as a mix, or is named like one. */
const isMixOf =
  (tracks: readonly Part[]) =>
  (file: RecordingTrack): boolean =>
    /MIX/.test(plainKey(file.function ?? '')) ||
    /\bMIX/.test(plainKey(file.name ?? '')) ||
    tracks.some((track) => isMixByWord(track) && isWord(file.name, track.name));

/** The word for a mix, alone or after "mix": `'L'`, `'Mix L'`, `'MixL'`. */
function isWord(found: string | undefined, word: string): boolean {
  const [name, wanted] = [plainKey(found ?? ''), plainKey(word)];
  return name === wanted || name.replace(/^MIX[\s._-]*/, '') === wanted;
}

function found(
  tracks: readonly Part[],
  fileOf: (track: Part, place: number) => RecordingTrack | undefined,
): Map<PartId, RecordingTrack> {
  return new Map(
    tracks.flatMap((track, place): [PartId, RecordingTrack][] => {
      const file = fileOf(track, place);
      return file ? [[track.id, file]] : [];
    }),
  );
}
