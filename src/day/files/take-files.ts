import { answersAtTake } from '../answers/answers.ts';
import type { TrackAnswer } from '../answers/track-answers.ts';
import type { Day, PartId, Take, TakeId } from '../model.ts';
import { settingsAtTake } from '../settings/settings.ts';
import { takesInOrder } from '../takes.ts';
import { fileNameOnTrack, fileNamesOf } from './file-name.ts';
import { namesOnCard } from './names-on-card.ts';

export interface TakeFile {
  readonly name: string;
  /** Its only track; null if all tracks of the take are in one file. */
  readonly track: PartId | null;
}

/**
 * A track that carries something at a take, or was named by hand: the mix, and isos with somebody on them,
 * muted or not.
 */
export const isRecorded = ({ state, typed }: TrackAnswer): boolean => state !== 'empty' || typed;

export const tracksRecorded = (day: Day, take: Take): PartId[] =>
  take.kind === 'mos'
    ? []
    : answersAtTake(day, take.id)
        .tracks.filter(isRecorded)
        .map(({ track }) => track.id);

type FilesOf = ReadonlyMap<TakeId, readonly TakeFile[]>;

const memory = new WeakMap<Day, FilesOf>();
const loggedMemory = new WeakMap<Day, FilesOf>();

/** The sound files of every take: as the card has them, once it was checked, else as the log names them. */
export function filesOfTakes(day: Day): FilesOf {
  const known = memory.get(day);
  if (known) return known;
  const logged = loggedFilesOfTakes(day);
  const onCard = namesOnCard(day);
  const files = [...logged].map(([take, named]): [TakeId, readonly TakeFile[]] => [
    take,
    onCard.get(take)?.map(({ name, track = null }) => ({ name, track })) ?? named,
  ]);
  const made = onCard.size > 0 ? new Map(files) : logged;
  memory.set(day, made);
  return made;
}

/**
 * The sound files of every take by the log: one with all its tracks or, if the recorder writes mono files, one per
 * track. MOS has none, unless somebody typed a name for it; a take with sound whose tracks are unknown has
 * one.
 */
export function loggedFilesOfTakes(day: Day): FilesOf {
  const known = loggedMemory.get(day);
  if (known) return known;
  const names = fileNamesOf(day);
  const files = new Map<TakeId, readonly TakeFile[]>();
  for (const take of takesInOrder(day)) {
    const isMono = settingsAtTake(day, take.id).fileLayout === 'mono';
    const tracks = isMono ? tracksRecorded(day, take) : [];
    const name = names.get(take.id) ?? '';
    files.set(
      take.id,
      tracks.length > 0 ? monoFiles(day, take, tracks) : name ? [{ name, track: null }] : [],
    );
  }
  loggedMemory.set(day, files);
  return files;
}

/** A typed name is used as it is if there is only one file. */
function monoFiles(day: Day, take: Take, tracks: readonly PartId[]): TakeFile[] {
  const typed = take.file?.trim();
  if (typed && tracks.length === 1) return [{ name: typed, track: tracks[0]! }];
  return tracks.map((track) => ({ name: fileNameOnTrack(day, take, track), track }));
}

/**
 * The file names of one take in short form, with the common part once: `'24BT3_1, _2, _16.wav'`; in full if
 * that would be ambiguous.
 */
export function namesTogether(names: readonly string[]): string {
  const [first = '', ...others] = names;
  if (others.length === 0) return first;
  const ending = /\.[A-Za-z0-9]{1,5}$/.exec(first)?.[0] ?? '';
  let shared = first;
  for (const name of others) while (!name.startsWith(shared)) shared = shared.slice(0, -1);
  // A mark begins with its separator.
  const from = Math.max(...['_', '-', ' ', '.'].map((mark) => shared.lastIndexOf(mark)));
  const isShort = from > 0 && names.every((name) => name.endsWith(ending));
  if (!isShort) return names.join(', ');
  const marks = names.map((name) => name.slice(from, name.length - ending.length));
  return marks.includes('') ? names.join(', ') : `${first.slice(0, from)}${marks.join(', ')}${ending}`;
}
