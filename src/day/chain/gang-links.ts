import type { FactId } from '../../shared/ids.ts';
import type { Links, PartId } from '../model.ts';

// Every set of sources that may share a track is a link of its own, true while the gang lasts. So one gang
// never replaces another, two phones declaring one each do not conflict, and ending one leaves the others.

const GANG = 'gang:';

/** Separates the ids in the key of a gang's link; no id contains it. */
const BETWEEN = ',';

/** Sources that share a track on purpose, with the fact behind it. */
export interface Gang {
  readonly sources: readonly string[];
  readonly by: FactId;
}

export const gangName = (track: PartId, sources: readonly string[]): string =>
  GANG + [track, ...new Set(sources.toSorted())].join(BETWEEN);

const isOn = (name: string, track: PartId): boolean => name.startsWith(GANG + track + BETWEEN);

/** The keys of all gangs of a track among these links, ended ones included. */
export const gangNamesOn = (names: Iterable<string>, track: PartId): string[] =>
  [...names].filter((name) => isOn(name, track));

/** The track and the sources of a gang, from its link's key; undefined for other links. */
export function gangNamed(name: string): { readonly track: PartId; readonly sources: string[] } | undefined {
  if (!name.startsWith(GANG)) return undefined;
  const [track, ...sources] = name.slice(GANG.length).split(BETWEEN);
  return { track: track!, sources };
}

/** The gangs in force on a track. */
export function gangsOn(links: Links, track: PartId): Gang[] {
  const gangs: Gang[] = [];
  for (const [name, { value, by }] of links) {
    if (value && isOn(name, track)) gangs.push({ sources: gangNamed(name)!.sources, by });
  }
  return gangs;
}

/** The gang that lets these share a track, if any. */
export const gangOf = (gangs: readonly Gang[], sources: readonly string[]): Gang | undefined =>
  gangs.find((gang) => sources.every((source) => gang.sources.includes(source)));
