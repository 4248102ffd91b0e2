import { aboutTracksOf, filesOn, namesTogether, type TakeFile } from '../day/files/take-files.ts';
import type { Day, PartId, Take } from '../day/model.ts';
import { recordsAs } from '../day/recorders/recorder-ids.ts';
import { rollingAtTake, rollOn } from '../day/recorders/rolling.ts';
import { type Settings, settingsAtTake } from '../day/settings/settings.ts';
import { cleanLine } from './clean-text.ts';
import { differingWords } from './setting-runs.ts';
import type { TrackLine } from './track-lines.ts';

/** A recorder that a take is on, and what it has of it. */
export interface OnRecorder {
  /** Two phones may have given two recorders one name. */
  readonly id: PartId;
  readonly name: string;
  /** The sound roll in it; empty if not entered. */
  readonly roll: string;
  readonly files: readonly TakeFile[];
  /** Their names in short form. */
  readonly file: string;
  readonly set: Settings;
  /** Rates and depth that are not those of the main recorder at this take: `['24 fps']`. */
  readonly otherwise: readonly string[];
  /** Whether it counts timecode at the rate of the main one: only then is its start known. */
  readonly isAtRate: boolean;
  /** The recorder whose tracks it records, its own or the first one's. */
  readonly recordsAs: PartId;
  readonly tracks: readonly TrackLine[];
}

/** The recorders that a take is on, the main one first. `lines`: the tracks of all recorders that carry something. */
export function onRecorders(day: Day, take: Take, lines: readonly TrackLine[]): OnRecorder[] {
  const main = settingsAtTake(day, take.id);
  return rollingAtTake(day, take.id).map(({ id, name }) => {
    const set = settingsAtTake(day, take.id, id);
    const files = cleanFiles(filesOn(day, id).get(take.id) ?? []);
    return {
      id,
      name: cleanLine(name),
      roll: cleanLine(rollOn(day, take.id, id)),
      files,
      file: namesTogether(files.map((file) => file.name)),
      set,
      otherwise: differingWords(set, main),
      isAtRate: set.timecodeRate === main.timecodeRate,
      recordsAs: recordsAs(day.rig, id),
      tracks: linesOn(day, lines, id),
    };
  });
}

export const cleanFiles = (files: readonly TakeFile[]): TakeFile[] =>
  files.map(({ name, track }) => ({ name: cleanLine(name), track }));

const remembered = new WeakMap<readonly TrackLine[], Map<PartId, readonly TrackLine[]>>();

/** Takes with the same chain share their lines, so those of each recorder are shared too. */
function linesOn(day: Day, lines: readonly TrackLine[], recorder: PartId): readonly TrackLine[] {
  const owner = recordsAs(day.rig, recorder);
  const known = remembered.get(lines) ?? new Map<PartId, readonly TrackLine[]>();
  remembered.set(lines, known);
  const own = known.get(owner) ?? aboutTracksOf(day.rig, lines, owner, ({ track }) => track);
  known.set(owner, own);
  return own;
}

/** Which takes not every recorder of the day has, as the first two forms said it. */
export const withLacked = <Take extends Recorded>(
  day: Day,
  lines: readonly Take[],
): (Take & { readonly onSome: boolean })[] =>
  lines.map((line) => {
    const { length } = line.recorders;
    return { ...line, onSome: length > 0 && length < day.rig.recorders.length + 1 };
  });

interface Recorded {
  readonly text: string;
  readonly recorders: readonly Pick<OnRecorder, 'id'>[];
}

/** Whether a take has to say which recorders have it, and the takes in a row of which that says the same. */
export interface OnSome {
  readonly onSome: boolean;
  /** The first and the last of them, where the others do not say it themselves. */
  readonly onSomeRun?: { readonly from: string; readonly to: string };
}

/**
 * Which takes a recorder missed: one that has takes both before and after it, or the one next to it, which speaks for
 * all that go on from there on the same recorders. What stands by all morning misses nothing, and its name at every line
 * would hide what matters.
 */
export function withMissed<Take extends Recorded>(lines: readonly Take[]): (Take & OnSome)[] {
  const recorded = lines.filter(({ recorders }) => recorders.length > 0);
  const on = recorded.map(({ recorders }) => recorders.map(({ id }) => id));
  const around = [...new Set(on.flat())].map((id) => {
    const has = (ids: readonly PartId[]): boolean => ids.includes(id);
    return { id, first: on.findIndex(has) - 1, last: on.findLastIndex(has) + 1 };
  });
  const missed = on.map((ids, at) =>
    around.some(({ id, first, last }) => at >= first && at <= last && !ids.includes(id)),
  );
  /** The last take from here on, forwards or backwards, that has the same and does not say so. */
  const end = (at: number, step: 1 | -1): number => {
    const next = at + step;
    return missed[next] === false && on[next]!.join() === on[at]!.join() ? end(next, step) : at;
  };
  const placeOf = new Map(recorded.map((line, at) => [line, at]));
  return lines.map((line) => {
    const at = placeOf.get(line);
    if (at === undefined || !missed[at]) return { ...line, onSome: false };
    const [from, to] = [end(at, -1), end(at, 1)];
    if (from === to) return { ...line, onSome: true };
    return { ...line, onSome: true, onSomeRun: { from: recorded[from]!.text, to: recorded[to]!.text } };
  });
}
