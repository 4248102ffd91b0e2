import type { Part, PartId, Rig } from './model.ts';
import { safeStem } from './safe-name.ts';
import { trackLabels } from './track-labels.ts';

const memory = new WeakMap<readonly Part[], ReadonlyMap<PartId, string>>();

const LONGEST_MARK_BYTES = 24;

/** How the mono files of each track are marked, as the track is called: `'5'`, `'L'`. No two are alike on any disk. */
export function trackMarks(rig: Rig): ReadonlyMap<PartId, string> {
  const known = memory.get(rig.tracks);
  if (known) return known;
  const marks = new Map<PartId, string>();
  const taken = new Set<string>();
  for (const [at, [track, label]] of [...trackLabels(rig)].entries()) {
    let mark = safeStem(label.replaceAll(/[^\p{L}\p{N}]+/gu, '-'), LONGEST_MARK_BYTES) || `${at + 1}`;
    while (taken.has(mark.toLowerCase())) mark += `-${at + 1}`;
    taken.add(mark.toLowerCase());
    marks.set(track, mark);
  }
  memory.set(rig.tracks, marks);
  return marks;
}

const LONGEST_NAME_BYTES = 100;
const ENDING = /\.[A-Za-z0-9]{1,5}$/;

/** A file's name with a mark before its ending, which is kept where the name must be cut: `'24BT3_5.wav'`. */
export function markedName(name: string, mark: string): string {
  const ending = ENDING.exec(name)?.[0] ?? '';
  const stem = ending ? name.slice(0, -ending.length) : name;
  const room = LONGEST_NAME_BYTES - new TextEncoder().encode(mark).length;
  return `${safeStem(stem, room) || stem}${mark}${ending}`;
}
