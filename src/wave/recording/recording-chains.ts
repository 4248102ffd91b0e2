import { possibleNextStarts, type RecordingPart } from './recording-part.ts';
import { type FileSet, originatorOf } from './recording-sets.ts';

/**
 * Joins sets that continue one another: the next starts where the last ended, within one sample, with the
 * same rate, tracks, tape, scene and take. This rejoins a recording split at 4 GiB, also across midnight.
 */
export function chainFileSets(sets: readonly FileSet[]): FileSet[] {
  const byStart = new Map<string, FileSet[]>();
  for (const set of sets) {
    const first = set.parts[0]!;
    if (first.start === undefined) continue;
    const key = chainKey(first, first.start);
    byStart.set(key, [...(byStart.get(key) ?? []), set]);
  }
  const next = new Map<FileSet, FileSet>();
  const continued = new Set<FileSet>();
  for (const set of sets) {
    const follower = followersOf(set, byStart).find((one) => !continued.has(one) && !leadsTo(one, set, next));
    if (!follower) continue;
    next.set(set, follower);
    continued.add(follower);
  }
  const heads = sets.filter((set) => !continued.has(set));
  return heads.map((head) => joined(head, next));
}

function followersOf(set: FileSet, byStart: ReadonlyMap<string, readonly FileSet[]>): FileSet[] {
  const last = set.parts.at(-1)!;
  return possibleNextStarts(last).flatMap((start) => byStart.get(chainKey(last, start)) ?? []);
}

/**
 * Whether following `next` from `set` reaches `wanted`: without this check a day recorded in full would form
 * a circle.
 */
function leadsTo(set: FileSet, wanted: FileSet, next: ReadonlyMap<FileSet, FileSet>): boolean {
  for (let one: FileSet | undefined = set; one; one = next.get(one)) if (one === wanted) return true;
  return false;
}

function chainKey(part: RecordingPart, start: number): string {
  const { tape, scene, take, sampleRate } = part.files[0]!.resolved;
  const layout = part.files.map(({ resolved }) => [
    resolved.channels,
    resolved.tracks.map(({ channel, name }) => [channel, name]),
  ]);
  return JSON.stringify([originatorOf(part.files[0]!), tape, scene, take, sampleRate, layout, start]);
}

function joined(head: FileSet, next: ReadonlyMap<FileSet, FileSet>): FileSet {
  const chain = [head];
  for (let set = next.get(head); set; set = next.get(set)) chain.push(set);
  return {
    parts: chain.flatMap(({ parts }) => parts),
    copies: chain.flatMap(({ copies }) => copies),
  };
}
