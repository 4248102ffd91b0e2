import { counterOf, databaseOf } from '../shared/ids.ts';
import { foldDay } from './fold.ts';
import type { Day, FactOf } from './model.ts';

export type SentReport = FactOf<'report-sent'>;

/** The reports that left the phone, in the order they went, without those taken back. */
export const sentReports = (day: Day): SentReport[] =>
  day.facts.filter((fact): fact is SentReport => fact.kind === 'report-sent' && !day.takenBack.has(fact.id));

/**
 * The day as whoever sent the report knew it: all that the same phone had said before, and of other phones what it had
 * seen. So the report can be made again byte for byte, whatever was said or merged since.
 */
export function dayWhenSent(day: Day, sent: SentReport): Day {
  const own = databaseOf(sent.id);
  const wasKnown = ({ id }: { id: string }): boolean =>
    databaseOf(id) === own ? id < sent.id : counterOf(id) <= (sent.seen?.[databaseOf(id)] ?? -1);
  return foldDay(day.id, [...day.facts.filter(wasKnown), ...day.unknown.filter(wasKnown)]);
}
