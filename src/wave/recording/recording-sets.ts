import type { WaveDescription } from '../file/describe-wave.ts';
import { inOrderOfRecording, type RecordingPart } from './recording-part.ts';

/** Files that belong together, as parts by start, and files that duplicate another one. */
export interface FileSet {
  readonly parts: readonly RecordingPart[];
  readonly copies: readonly WaveDescription[];
}

/**
 * Groups files into sets: by FAMILY_UID, else by the same tape, scene, take, start and length; never files of two
 * recorders. A file for a place that is already filled is a copy. The order of the input does not matter.
 */
export function groupFileSets(files: readonly WaveDescription[]): FileSet[] {
  const sorted = [...files].sort(byStartAndPlace);
  const groups = new Map<string, WaveDescription[]>();
  for (const [index, file] of sorted.entries()) {
    const key = setKey(file) ?? `alone ${index}`;
    const group = groups.get(key);
    if (group) group.push(file);
    else groups.set(key, [file]);
  }
  return [...groups.values()].map(fileSetOf);
}

/** What the files of one set share; includes the take, because some writers never change the FAMILY_UID. */
function setKey(file: WaveDescription): string | undefined {
  const { resolved, ixml, size } = file;
  const { tape, scene, take, start, length, sampleRate, channels, tracks } = resolved;
  const slate = [originatorOf(file), tape, scene, take];
  const family = ixml?.fileSet?.familyUid;
  if (family && !/^0*$/.test(family)) return JSON.stringify(['family', family, ...slate]);
  if (take === undefined || !start) return undefined;
  const namesItsTracks = tracks.some(({ channel, name }) => channel !== undefined || name !== undefined);
  if (channels !== 1 && !namesItsTracks) return undefined;
  return JSON.stringify(['take', ...slate, start.samples, sampleRate, length ?? size]);
}

/** The recorder, as it calls itself; empty if it does not. */
export const originatorOf = ({ bext }: WaveDescription): string => bext?.originator.trim() ?? '';

function fileSetOf(files: readonly WaveDescription[]): FileSet {
  const copies: WaveDescription[] = [];
  const byStart = new Map<number | undefined, Map<string, WaveDescription>>();
  for (const file of files) {
    const start = file.resolved.start?.samples;
    const places = byStart.get(start) ?? new Map<string, WaveDescription>();
    byStart.set(start, places);
    const place = placeInSet(file);
    if (places.has(place)) copies.push(file);
    else places.set(place, file);
  }
  const parts = [...byStart].map(([start, places]) => partOf(start, [...places.values()]));
  return { parts: inOrderOfRecording(parts), copies };
}

const partOf = (start: number | undefined, files: readonly WaveDescription[]): RecordingPart => ({
  files,
  start,
  length: Math.max(0, ...files.map((file) => file.resolved.length ?? 0)),
});

/** Index in the set, else the channels or names in the file, else its file name. */
function placeInSet({ ixml, resolved, name }: WaveDescription): string {
  const index = ixml?.fileSet?.index;
  if (index !== undefined) return `index ${index}`;
  const marks = resolved.tracks.map((track) => track.channel ?? track.name);
  return marks.some((mark) => mark !== undefined) ? JSON.stringify(marks) : `name ${name}`;
}

function byStartAndPlace(a: WaveDescription, b: WaveDescription): number {
  const startOf = ({ resolved }: WaveDescription): number => resolved.start?.samples ?? -1;
  const channelOf = ({ ixml, resolved }: WaveDescription): number =>
    resolved.tracks[0]?.channel ?? (Number.parseInt(ixml?.fileSet?.index ?? '', 10) || 0);
  return (
    startOf(a) - startOf(b) || channelOf(a) - channelOf(b) || compareText(a.name, b.name) || a.size - b.size
  );
}

export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
