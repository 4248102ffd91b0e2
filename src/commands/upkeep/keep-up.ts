import type { Day } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { DeviceId } from '../../facts/kinds/envelope.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { CardFields, DeviceFields } from '../../facts/kinds/upkeep-logged.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { type CommandResult, type Moment, missing } from '../command.ts';
import { outOfBounds } from './bounds.ts';
import { wrongRecorder } from './wrong-recorder.ts';

const isDevice = (day: Day, id: DeviceId): boolean =>
  id === FIRST_RECORDER ||
  day.upkeep.devices.has(id) ||
  day.upkeep.listeners.has(id) ||
  ['transmitter', 'recorder'].includes(day.rig.byId.get(id)?.type ?? '');

export function wrongDevices(day: Day, devices: readonly DeviceId[]): Result<never> | undefined {
  if (devices.length === 0) return fail({ code: 'nothing-chosen' });
  const unknown = devices.find((id) => !isDevice(day, id));
  return unknown === undefined ? undefined : missing('device', unknown);
}

/** Something done now, or so many minutes ago. */
export interface Ago {
  readonly minutesAgo?: number;
}

function atOf({ minutesAgo }: Ago, now: Moment): Result<{ atMs?: number }> {
  if (minutesAgo === undefined || minutesAgo === 0) return ok({});
  const wrong = outOfBounds([{ field: 'minutesAgo', value: minutesAgo, min: 0, max: 48 * 60 }]);
  return wrong ?? ok({ atMs: now.atMs - Math.round(minutesAgo * 60_000) });
}

/** Fresh cells went into these devices. */
export function freshCells(
  day: Day,
  devices: readonly DeviceId[],
  now: Moment,
  ago: Ago = {},
): CommandResult {
  const wrong = wrongDevices(day, devices);
  if (wrong) return wrong;
  const at = atOf(ago, now);
  return at.ok ? ok([{ kind: 'cells-changed', devices: [...devices], ...at.value }]) : at;
}

/** No fresh cells went into this device after all; what the same entry said of others is said again. */
export function notFresh(day: Day, device: DeviceId): CommandResult {
  const by = day.upkeep.cells.get(device)?.by;
  const fact = day.facts.find(({ id }) => id === by);
  if (fact?.kind !== 'cells-changed') return missing('device', device);
  const { devices, runtimeHours, atMs = fact.at } = fact;
  const others = devices.filter((id) => id !== device);
  const again: Draft = {
    ...{ kind: 'cells-changed', devices: others, atMs },
    ...(runtimeHours !== undefined && { runtimeHours }),
  };
  return ok([
    { kind: 'fact-retracted', targets: [fact.id], by: 'hand' },
    ...(others.length > 0 ? [again] : []),
  ]);
}

/** These devices were jammed, by default from the first recorder. */
export function jamDevices(
  day: Day,
  devices: readonly DeviceId[],
  now: Moment,
  from: DeviceId = FIRST_RECORDER,
  ago: Ago = {},
): CommandResult {
  const wrong = wrongDevices(day, devices) ?? wrongDevices(day, [from]);
  if (wrong) return wrong;
  if (devices.includes(from)) return fail({ code: 'jam-from-itself' });
  const at = atOf(ago, now);
  return at.ok ? ok([{ kind: 'devices-jammed', devices: [...devices], from, ...at.value }]) : at;
}

const wrongDeviceFields = ({ runtimeHours, ppm }: DeviceFields): Result<never> | undefined =>
  outOfBounds([
    { field: 'runtimeHours', value: runtimeHours, min: 0.05, max: 1000 },
    { field: 'ppm', value: ppm, min: 0, max: 10_000 },
  ]);

/** Sets fields of existing devices: runtime, clock tolerance. */
export function describeDevices(day: Day, devices: readonly DeviceId[], fields: DeviceFields): CommandResult {
  const wrong = wrongDevices(day, devices) ?? wrongDeviceFields(fields);
  if (wrong) return wrong;
  if (fields.name !== undefined && fields.name.trim() === '') return fail({ code: 'name-empty' });
  return ok([{ kind: 'devices-described', devices: [...devices], fields }]);
}

/** Adds a device that is not a transmitter of the rig: a slate, a timecode box, a camera, the comms base. */
export function addDevice(id: DeviceId, fields: DeviceFields): CommandResult {
  const name = fields.name?.trim() ?? '';
  if (name === '') return fail({ code: 'name-empty' });
  if (name.length > 200) return fail({ code: 'name-too-long', longest: 200 });
  const wrong = wrongDeviceFields(fields);
  return wrong ?? ok([{ kind: 'devices-described', devices: [id], fields: { ...fields, name } }]);
}

const MOST_BYTES = 1e15;

/** Describes a card. A new one needs its size. */
export function describeCard(day: Day, card: string, fields: CardFields): CommandResult {
  const known = day.upkeep.cards.get(card);
  const { bytes, usedBytes } = { ...known, ...fields };
  if (bytes === undefined) return fail({ code: 'card-without-size' });
  const wrong =
    wrongRecorder(day, fields) ??
    outOfBounds([
      { field: 'bytes', value: bytes, min: 1, max: MOST_BYTES, whole: true },
      { field: 'usedBytes', value: usedBytes, min: 0, max: MOST_BYTES, whole: true },
      { field: 'tracks', value: fields.tracks, min: 1, max: 512, whole: true },
      { field: 'copies', value: fields.copies, min: 0, max: 20, whole: true },
    ]);
  if (wrong) return wrong;
  if (usedBytes !== undefined && usedBytes > bytes) return fail({ code: 'card-over-full' });
  return ok([{ kind: 'card-described', card, fields }]);
}
