import { handOver as given } from '../../commands/day/hand-over.ts';
import { noteSent as sent } from '../../commands/day/send-report.ts';
import { onAnyDay } from './command.ts';

export { PAPERS, type ReportFrom, type ReportMade, TABLE_LINES } from '../../facts/kinds/report-sent.ts';

export const noteSent = onAnyDay(sent);
export const handOver = onAnyDay(given);
