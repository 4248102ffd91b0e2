import * as described from '../../commands/describe.ts';
import { onAnyDay } from './command.ts';

export { headAfter, isSameProduction, newDayHead } from '../../commands/start-day.ts';

export const describeDay = onAnyDay(described.describeDay);
