import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { answersAtTake } from '../answers/answers.ts';
import type { TrackAnswer } from '../answers/track-answers.ts';
import type { Day, PartId, Rig, Take, TakeId } from '../model.ts';
import { tracksOf } from '../recorders/recorder-parts.ts';
import { mainAtTake } from '../recorders/rolling.ts';
import { settingsAtTake } from '../settings/settings.ts';
import { takesInOrder } from '../takes.ts';
import { AS_ONE, fileNameOnTrack, fileNamesOn, nameTyped } from './file-name.ts';
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

/** The tracks that a take has on a recorder, the main one of the take if none is named. */
export function tracksRecorded(day: Day, take: Take, recorder: PartId = mainAtTake(day, take.id)): PartId[] {
  if (take.kind === 'mos') return [];
  const { tracks } = answersAtTake(day, take.id);
  return aboutTracksOf(day.rig, tracks, recorder, ({ track }) => track.id)
    .filter(isRecorded)
    .map(({ track }) => track.id);
}

/** Those answers or lines that are about the tracks of a recorder. */
export function aboutTracksOf<Line>(
  rig: Rig,
  lines: readonly Line[],
  recorder: PartId,
  trackOf: (line: Line) => PartId,
): readonly Line[] {
  const own = tracksOf(rig, recorder);
  if (own.length === rig.tracks.length) return lines;
  const ids = new Set(own.map(({ id }) => id));
  return lines.filter((line) => ids.has(trackOf(line)));
}

export type FilesOf = ReadonlyMap<TakeId, readonly TakeFile[]>;

type Remembered = WeakMap<Day, Map<PartId, FilesOf>>;

const memory: Remembered = new WeakMap();
const loggedMemory: Remembered = new WeakMap();

function rememberedOn(remembered: Remembered, day: Day, recorder: PartId, make: () => FilesOf): FilesOf {
  const known = remembered.get(day) ?? new Map<PartId, FilesOf>();
  remembered.set(day, known);
  const files = known.get(recorder) ?? make();
  known.set(recorder, files);
  return files;
}

/** The sound files of every take that a recorder has: as its card has them, once it was checked, else as the log names them. */
export const filesOn = (day: Day, recorder: PartId): FilesOf =>
  rememberedOn(memory, day, recorder, () => {
    const logged = loggedFilesOn(day, recorder);
    const onCard = namesOnCard(day, recorder === AS_ONE ? undefined : recorder);
    if (onCard.size === 0) return logged;
    return new Map(
      [...logged].map(([take, named]) => [
        take,
        onCard.get(take)?.map(({ name, track = null }) => ({ name, track })) ?? named,
      ]),
    );
  });

/**
 * The sound files of every take that a recorder has, by the log: one with all its tracks or, if it writes mono
 * files, one per track. MOS has none, unless somebody typed a name for it; a take with sound whose tracks are
 * unknown has one.
 */
export const loggedFilesOn = (day: Day, recorder: PartId): FilesOf =>
  rememberedOn(loggedMemory, day, recorder, () => {
    const tracksOn = recorder === AS_ONE ? FIRST_RECORDER : recorder;
    return new Map(
      [...fileNamesOn(day, recorder)].map(([id, name]) => {
        const take = day.takes.get(id)!;
        const isMono = settingsAtTake(day, id, tracksOn).fileLayout === 'mono';
        const tracks = isMono ? tracksRecorded(day, take, tracksOn) : [];
        if (tracks.length > 0) return [id, monoFiles(day, take, tracks, recorder)];
        return [id, name ? [{ name, track: null }] : []];
      }),
    );
  });

/** The sound files of every take of the day, on its main recorder. */
export const filesOfTakes = (day: Day): FilesOf => onMain(day, filesOn);

/** The same by the log. */
export const loggedFilesOfTakes = (day: Day): FilesOf => onMain(day, loggedFilesOn);

const onMain = (day: Day, files: (day: Day, recorder: PartId) => FilesOf): FilesOf =>
  day.rig.recorders.length === 0
    ? files(day, FIRST_RECORDER)
    : new Map(takesInOrder(day).map(({ id }) => [id, files(day, mainAtTake(day, id)).get(id) ?? []]));

/** A typed name is used as it is if there is only one file. */
function monoFiles(day: Day, take: Take, tracks: readonly PartId[], recorder: PartId): TakeFile[] {
  const typed = nameTyped(day, take, recorder);
  if (typed && tracks.length === 1) return [{ name: typed, track: tracks[0]! }];
  return tracks.map((track) => ({ name: fileNameOnTrack(day, take, track, recorder), track }));
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
