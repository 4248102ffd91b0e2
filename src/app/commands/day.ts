import * as described from '../../commands/day/describe.ts';
import { wrapDay as wrapped } from '../../commands/day/wrap-day.ts';
import * as set from '../../commands/line/set-recorder.ts';
import { onAnyDay, onDay } from './command.ts';

export { headAfter, isSameProduction, newDayHead } from '../../commands/day/start-day.ts';

export const changeHead = onDay(set.changeHead);
export const wrapDay = onDay(wrapped);
export const describeDay = onAnyDay(described.describeDay);
