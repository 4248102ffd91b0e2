import type { Day } from '../../day/model.ts';
import type { DeviceId } from '../../facts/kinds/envelope.ts';

/** The recorder, as a device: what everything is usually jammed from. */
export const RECORDER = 'recorder';

/** Anything with cells or timecode. */
export interface Device {
  readonly id: DeviceId;
  readonly name: string;
  readonly type: 'pack' | 'recorder' | 'other';
  readonly hasCells: boolean;
  readonly hasTimecode: boolean;
  readonly runtimeHours: number | undefined;
  readonly runtimeBasis: 'measured' | 'planned';
  /** How far its clock may run off; undefined until it was said. */
  readonly ppm: number | undefined;
}

/** The recorder, the transmitters of the rig (which have cells), and whatever else was described. */
export function devicesOf(day: Day): Device[] {
  const packs = day.rig.transmitters.map(({ id, name }) => device(day, id, 'pack', name));
  const known = new Set([RECORDER, ...packs.map(({ id }) => id)]);
  const others = [...day.upkeep.devices]
    .filter(([id, { struck, name }]) => !known.has(id) && !struck && name)
    .map(([id, { name = id }]) => device(day, id, 'other', name));
  return [device(day, RECORDER, 'recorder', day.header.recorder || 'Recorder'), ...packs, ...others];
}

function device(day: Day, id: DeviceId, type: Device['type'], name: string): Device {
  const said = day.upkeep.devices.get(id);
  return {
    id,
    name,
    type,
    hasCells: said?.hasCells ?? type === 'pack',
    hasTimecode: said?.hasTimecode ?? type === 'recorder',
    runtimeHours: said?.runtimeHours ?? undefined,
    // A basis that only a newer version knows is not taken for a measurement.
    runtimeBasis: said?.runtimeBasis === 'measured' ? 'measured' : 'planned',
    ppm: clockPpm(day, id),
  };
}

/** How far the clock of a device may run off, also of one that was taken out since. */
export const clockPpm = (day: Day, id: DeviceId): number | undefined =>
  day.upkeep.devices.get(id)?.ppm ?? undefined;

/** The same of a clock at the head of a chain: with nothing said, the recorder is what all others are held against. */
export const headPpm = (day: Day, id: DeviceId): number | undefined =>
  clockPpm(day, id) ?? (id === RECORDER ? 0 : undefined);
