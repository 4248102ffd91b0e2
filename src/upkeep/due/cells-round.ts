import type { Day, FactId } from '../../day/model.ts';
import type { Device } from './day-devices.ts';
import type { UpkeepNow } from './day-due.ts';

/** A device of a round of fresh cells, and the entry that says they are in, if somebody has been there. */
export interface CellsToDo {
  readonly device: Device;
  readonly doneBy: FactId | undefined;
}

/** What was done so long ago belongs to an earlier round. */
const ROUND_MS = 3_600_000;

/** The devices whose cells are due or were never marked fresh, and those done within the hour, in the order of the rig. */
export function cellsRound(day: Day, upkeep: UpkeepNow, nowMs: number): readonly CellsToDo[] {
  const due = new Set(upkeep.cells.due.flatMap(({ device, action }) => (action === 'later' ? [] : device)));
  return upkeep.devices.flatMap((device): CellsToDo[] => {
    if (!device.hasCells) return [];
    const fresh = day.upkeep.cells.get(device.id);
    if (!fresh || due.has(device.id)) return [{ device, doneBy: undefined }];
    return nowMs - fresh.atMs <= ROUND_MS ? [{ device, doneBy: fresh.by }] : [];
  });
}
