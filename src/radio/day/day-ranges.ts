import type { Day } from '../../day/model.ts';
import type { Problem } from '../../shared/result.ts';
import type { TuningRange } from '../carrier.ts';
import { checkNewKhz } from '../check-input.ts';

/** The letters before a pack's number; packs with the same ones are a group. `groupOf('A12')` → `'A'` */
export const groupOf = (name: string): string => /^(.*?)\s*\d*$/.exec(name)?.[1] ?? name;

/** A tunable band with all required fields. */
export interface DayRange extends TuningRange {
  readonly id: string;
  readonly group: string;
  readonly spacingKhz: number | undefined;
}

const RASTER_KHZ = 25;

/** Where packs can be tuned, as entered; bands without both ends are left out. */
export const rangesOf = (day: Day): DayRange[] =>
  [...day.upkeep.bands].flatMap(([id, band]) => {
    const { use, struck, fromKhz, toKhz, rasterKhz = RASTER_KHZ, group = '', spacingKhz } = band;
    return use === 'tunable' && !struck && fromKhz && toKhz
      ? [{ id, group, fromKhz, toKhz, rasterKhz, spacingKhz: spacingKhz ?? undefined }]
      : [];
  });

/** Ranges of one pack: those of its group, else those for all packs. Empty if none were entered. */
export function rangesFor(day: Day, name: string): DayRange[] {
  const ranges = rangesOf(day);
  const own = ranges.filter(({ group }) => group !== '' && group === groupOf(name));
  return own.length > 0 ? own : ranges.filter(({ group }) => group === '');
}

/** Why a pack's ranges exclude a frequency: outside them, or off their raster. */
export function rangeProblemOf(day: Day, name: string, khz: number): Problem | undefined {
  const checked = checkNewKhz(khz, [], rangesFor(day, name));
  return checked.ok ? undefined : checked.problem;
}

/** The spacing a pack needs: the widest of its ranges; undefined for the plan's default. */
export function spacingOfGroup(day: Day, name: string): number | undefined {
  const asked = rangesFor(day, name).flatMap(({ spacingKhz }) => spacingKhz ?? []);
  return asked.length > 0 ? Math.max(...asked) : undefined;
}

/** The groups of the rig's packs, in reading order, each with its size. */
export function groupsOf(day: Day): { readonly group: string; readonly packs: readonly string[] }[] {
  const groups = new Map<string, string[]>();
  for (const { id, name } of day.rig.transmitters) {
    const group = groupOf(name);
    groups.set(group, [...(groups.get(group) ?? []), id]);
  }
  return [...groups].map(([group, packs]) => ({ group, packs }));
}

/** The range that covers every pack's frequency and tuning range; undefined if there is none. */
export function neighbourhoodOf(day: Day): { readonly fromKhz: number; readonly toKhz: number } | undefined {
  const ends = [
    ...day.rig.transmitters.flatMap(({ khz }) => khz ?? []),
    ...rangesOf(day).flatMap(({ fromKhz, toKhz }) => [fromKhz, toKhz]),
  ];
  if (ends.length === 0) return undefined;
  return { fromKhz: Math.min(...ends), toKhz: Math.max(...ends) };
}
