import * as runs from '../../commands/upkeep/describe-runs.ts';
import * as keeping from '../../commands/upkeep/keep-up.ts';
import { planShift as plannedShift, type TypedShift } from '../../commands/upkeep/plan-shift.ts';
import type { Command } from '../day-store.ts';
import { onAnyDay, onDay } from './command.ts';

export const freshCells =
  (devices: readonly string[], ago?: keeping.Ago): Command =>
  (day, now) =>
    keeping.freshCells(day, devices, now, ago);
/** From the recorder by default. */
export const jamDevices =
  (devices: readonly string[], from?: string, ago?: keeping.Ago): Command =>
  (day, now) =>
    keeping.jamDevices(day, devices, now, from, ago);
export const planShift =
  (typed: TypedShift): Command =>
  (day, now) =>
    plannedShift(day, typed, now);
export const notFresh = onDay(keeping.notFresh);
export const addDevice = onAnyDay(keeping.addDevice);
export const describeDevices = onDay(keeping.describeDevices);
export const describeCard = onDay(keeping.describeCard);
export const describeRun = onDay(runs.describeRun);
export const describeLeads = onAnyDay(runs.describeLeads);
export const putOnSnake = onAnyDay(runs.putOnSnake);
