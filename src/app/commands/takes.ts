import * as takes from '../../commands/line/log-takes.ts';
import type { Command } from '../day-store.ts';
import { atMoment, onAnyDay, onDay } from './command.ts';

export { clockFor } from '../../commands/line/log-takes.ts';

export const rollTake = atMoment(takes.rollTake);
export const cutTake = atMoment(takes.cutTake);
export const logTake = onDay(takes.logTake);
export const describeTake = onDay(takes.describeTake);
export const circleTake = onDay(takes.circleTake);
export const addNote = onDay(takes.addNote);
export const callSlate = onDay(takes.callSlate);
export const changeRoll = onAnyDay(takes.changeRoll);
export const followClock =
  (frames: number): Command =>
  (day, now) =>
    takes.followClock(day, frames, now);
