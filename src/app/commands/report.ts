import { noteSent as sent } from '../../commands/send-report.ts';
import { onAnyDay } from './command.ts';

export { crc32 } from '../../facts/crc32.ts';
export type { ReportFrom, ReportMade } from '../../facts/report-sent.ts';

export const noteSent = onAnyDay(sent);
