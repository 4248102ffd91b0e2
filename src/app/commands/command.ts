import type { Moment, Said } from '../../commands/command.ts';
import type { Day } from '../../day/model.ts';
import type { Command } from '../day-store.ts';

// A screen says what is to be done. On which day and at which moment, the store says when it runs the command.

/** A command of the day. */
export const onDay =
  <Intent extends unknown[]>(said: (day: Day, ...intent: Intent) => Said) =>
  (...intent: Intent): Command =>
  (day) =>
    said(day, ...intent);

/** A command of the day and of the moment it is given. */
export const atMoment =
  <Intent extends unknown[]>(said: (day: Day, now: Moment, ...intent: Intent) => Said) =>
  (...intent: Intent): Command =>
  (day, now) =>
    said(day, now, ...intent);

/** A command that needs to know nothing of the day. */
export const onAnyDay =
  <Intent extends unknown[]>(said: (...intent: Intent) => Said) =>
  (...intent: Intent): Command =>
  () =>
    said(...intent);
