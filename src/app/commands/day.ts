import * as described from '../../commands/day/describe.ts';
import { onAnyDay } from './command.ts';

export { headAfter, isSameProduction, newDayHead } from '../../commands/day/start-day.ts';

export const describeDay = onAnyDay(described.describeDay);
