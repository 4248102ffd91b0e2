import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import type { CellsDue } from '../../upkeep/due/batteries.ts';
import type { Device } from '../../upkeep/due/day-devices.ts';
import { swapsToWrap, type UpkeepNow } from '../../upkeep/due/day-due.ts';
import { otherHolder } from '../words/phones.ts';
import { clockOf, hoursWords } from './words.ts';

/** When fresh cells went in and who put them in, how long they last, and when they are due. */
export function cellsWords(day: Day, upkeep: UpkeepNow, device: Device, now: Moment, own: string): string {
  const fresh = day.upkeep.cells.get(device.id);
  const runtime = fresh?.runtimeHours ?? device.runtimeHours;
  const lasts =
    runtime === undefined ? 'battery life not set' : `${hoursWords(runtime)} ${device.runtimeBasis}`;
  if (!fresh) return `${lasts}; not marked fresh`;
  const clock = (ms: number): string => clockOf(ms, now.zone, now.atMs);
  const due = upkeep.cells.due.find((one: CellsDue) => one.device === device.id);
  const by = otherHolder(day, fresh.by, own);
  const swaps = swapsToWrap(day, device).map(clock);
  return [
    `fresh ${clock(fresh.atMs)}${by && ` by ${by}`}, ${lasts}`,
    due ? `due ${clock(due.dueAtMs)}, flat ${clock(due.emptyAtMs)}` : '',
    swaps.length > 0 ? `change at ${swaps.join(', ')}` : '',
  ]
    .filter((words) => words !== '')
    .join(' · ');
}
