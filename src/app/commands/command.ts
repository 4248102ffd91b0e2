import type { CommandResult, Moment } from '../../commands/command.ts';
import type { Day } from '../../day/model.ts';
import type { Command } from '../day-store.ts';

// A screen says what to do; the store supplies the day and the moment.

export const onDay =
  <Intent extends unknown[]>(command: (day: Day, ...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  (day) =>
    command(day, ...intent);

export const atMoment =
  <Intent extends unknown[]>(command: (day: Day, now: Moment, ...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  (day, now) =>
    command(day, now, ...intent);

export const onAnyDay =
  <Intent extends unknown[]>(command: (...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  () =>
    command(...intent);
