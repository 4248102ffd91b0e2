import { knew } from '../../facts/kinds/envelope.ts';
import type { ReportFrom } from '../../facts/kinds/report-sent.ts';
import { counterOf, databaseOf, type FactId, writerOf } from '../../shared/ids.ts';
import { foldDay } from '../fold/fold.ts';
import type { Day, FactOf } from '../model.ts';
import { setupOf } from '../slate.ts';

export type SentReport = FactOf<'report-sent'>;

/** The reports that left the phone, in order, without retracted ones. */
export function sentReports(day: Day): SentReport[] {
  const sent = day.facts.filter(
    (fact): fact is SentReport => fact.kind === 'report-sent' && !day.takenBack.has(fact.id),
  );
  const { order } = day;
  // Between phones, ids only show who had more facts, not who was first.
  return order ? sent.sort((a, b) => order.timeOf(a.id) - order.timeOf(b.id)) : sent;
}

/** `rankOf('A')` is 1, `rankOf('B')` 2; 0 if it is not a revision letter. */
const rankOf = (letter: string): number => setupOf(letter) ?? 0;

/** The report with the highest letter, the later of two with the same; `below`: only earlier letters. */
export function latestSent(day: Day, below?: string): SentReport | undefined {
  const limit = below === undefined ? Number.POSITIVE_INFINITY : rankOf(below);
  return sentReports(day)
    .filter(({ letter }) => rankOf(letter) < limit)
    .reduce<SentReport | undefined>(
      (latest, report) => (latest && rankOf(latest.letter) > rankOf(report.letter) ? latest : report),
      undefined,
    );
}

/** Other reports sent under the same letter, latest first: empty if one phone sent them all. */
export function sentBeside(day: Day, sent: SentReport): SentReport[] {
  const all = sentReports(day).filter(({ letter }) => letter === sent.letter);
  if (new Set(all.map(({ id }) => databaseOf(id))).size < 2) return [];
  return all.filter(({ id }) => id !== sent.id).reverse();
}

const MOST_UNREAD = 2000;

/** What is known of a day now, in the form a report stores: `{ known: { phonea00000: 41 } }`. */
export function knownOf(day: Day): Pick<ReportFrom, 'known' | 'unread'> {
  const known: Record<string, number> = {};
  for (const { id } of [...day.facts, ...day.unknown]) {
    const writer = writerOf(id);
    known[writer] = Math.max(known[writer] ?? 0, counterOf(id));
  }
  const unread = day.unknown.slice(0, MOST_UNREAD).map(({ id }) => id);
  return unread.length > 0 ? { known, unread } : { known };
}

/**
 * The day as known when the report was made, so that the report can be remade byte for byte, whatever was
 * added, merged or understood since.
 */
export function dayWhenSent(day: Day, sent: SentReport): Day {
  const unread = new Set(sent.from?.unread);
  const facts = [...day.facts, ...day.unknown].filter(({ id }) => wasKnown(sent, id));
  return foldDay(
    day.id,
    facts.map((fact) => (unread.has(fact.id) ? { ...fact, unknown: true } : fact)),
  );
}

/** Whether a report was made from a fact. */
export function wasKnown(sent: SentReport, id: FactId): boolean {
  if (sent.from) return counterOf(id) <= (sent.from.known[writerOf(id)] ?? -1);
  return id !== sent.id && knew(sent, id);
}
