import type { CommandResult, Moment } from '../../commands/command.ts';
import type { Day } from '../../day/model.ts';
import type { Command } from '../day-store.ts';

// A screen says what is to be done. On which day and at which moment, the store says when it runs the command.

/** A command of the day. */
export const onDay =
  <Intent extends unknown[]>(command: (day: Day, ...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  (day) =>
    command(day, ...intent);

/** A command of the day and of the moment it is given. */
export const atMoment =
  <Intent extends unknown[]>(command: (day: Day, now: Moment, ...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  (day, now) =>
    command(day, now, ...intent);

/** A command that needs to know nothing of the day. */
export const onAnyDay =
  <Intent extends unknown[]>(command: (...intent: Intent) => CommandResult) =>
  (...intent: Intent): Command =>
  () =>
    command(...intent);
