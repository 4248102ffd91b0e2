import type { Day } from '../../day/model.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';

/** Wraps the day, or reopens it; nothing if it already is what is asked. */
export const wrapDay = (day: Day, wrapped: boolean): CommandResult =>
  ok((day.wrap !== undefined) === wrapped ? [] : [{ kind: 'day-wrapped', wrapped }]);
