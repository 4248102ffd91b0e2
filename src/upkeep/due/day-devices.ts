import { stillOut } from '../../day/answers/listeners.ts';
import type { Day } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { DeviceId } from '../../facts/kinds/envelope.ts';

/** The first recorder as a device: everything is usually jammed from it. */
export const RECORDER = 'recorder';

/** Anything with cells or timecode. */
export interface Device {
  readonly id: DeviceId;
  readonly name: string;
  /** A listener's is the receiver handed out to them. */
  readonly type: 'pack' | 'recorder' | 'listener' | 'other';
  readonly hasCells: boolean;
  readonly hasTimecode: boolean;
  readonly runtimeHours: number | undefined;
  readonly runtimeBasis: 'measured' | 'planned';
  /** How far its clock may drift; undefined until entered. */
  readonly ppm: number | undefined;
}

/** The recorders, the rig's transmitters and the receivers of listeners (which have cells), and whatever else was described. */
export function devicesOf(day: Day): Device[] {
  const packs = day.rig.transmitters.map(({ id, name }) => device(day, id, 'pack', name));
  const recorders = recordersOf(day).map(({ id, name }) => device(day, id, 'recorder', name));
  const listeners = stillOut(day).map(({ id, name, receiver }) => receiverOf(day, id, receiver || name));
  const known = new Set([...recorders, ...packs].map(({ id }) => id));
  const others = [...day.upkeep.devices]
    .filter(([id, { struck, name }]) => !known.has(id) && !day.upkeep.listeners.has(id) && !struck && name)
    .map(([id, { name = id }]) => device(day, id, 'other', name));
  return [...recorders, ...packs, ...listeners, ...others];
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
    // A basis that only a newer version knows does not count as a measurement.
    runtimeBasis: said?.runtimeBasis === 'measured' ? 'measured' : 'planned',
    ppm: clockPpm(day, id),
  };
}

/** It has cells and no timecode, whatever is said of it. */
const receiverOf = (day: Day, id: DeviceId, name: string): Device => ({
  ...device(day, id, 'listener', name),
  hasCells: true,
  hasTimecode: false,
});

/** How far a device's clock may drift, including devices removed since. */
export const clockPpm = (day: Day, id: DeviceId): number | undefined =>
  day.upkeep.devices.get(id)?.ppm ?? undefined;

/** The same for a clock at the head of a chain: by default the recorder is the reference for all others. */
export const headPpm = (day: Day, id: DeviceId): number | undefined =>
  clockPpm(day, id) ?? (id === RECORDER ? 0 : undefined);
