import { knew } from '../../facts/kinds/envelope.ts';
import type { ReportFrom } from '../../facts/kinds/report-sent.ts';
import { counterOf, databaseOf, type FactId, writerOf } from '../../shared/ids.ts';
import { foldDay } from '../fold/fold.ts';
import type { Day, FactOf } from '../model.ts';
import { setupOf } from '../slate.ts';

export type SentReport = FactOf<'report-sent'>;

/** The reports that left the phone, in the order they went, without those taken back. */
export function sentReports(day: Day): SentReport[] {
  const sent = day.facts.filter(
    (fact): fact is SentReport => fact.kind === 'report-sent' && !day.takenBack.has(fact.id),
  );
  const { order } = day;
  // Between phones ids tell who had said more.
  return order ? sent.sort((a, b) => order.timeOf(a.id) - order.timeOf(b.id)) : sent;
}

/** `rankOf('A')` is 1, `rankOf('B')` 2; 0 for what is no letter of a revision. */
const rankOf = (letter: string): number => setupOf(letter) ?? 0;

/** The report with the highest letter, and of two with one letter the later; `below` looks only at letters before it. */
export function latestSent(day: Day, below?: string): SentReport | undefined {
  const limit = below === undefined ? Number.POSITIVE_INFINITY : rankOf(below);
  return sentReports(day)
    .filter(({ letter }) => rankOf(letter) < limit)
    .reduce<SentReport | undefined>(
      (latest, report) => (latest && rankOf(latest.letter) > rankOf(report.letter) ? latest : report),
      undefined,
    );
}

/** Whatever else went out under the letter of a report, the latest first: nothing where one phone sent all of it. */
export function sentBeside(day: Day, sent: SentReport): SentReport[] {
  const all = sentReports(day).filter(({ letter }) => letter === sent.letter);
  if (new Set(all.map(({ id }) => databaseOf(id))).size < 2) return [];
  return all.filter(({ id }) => id !== sent.id).reverse();
}

const MOST_UNREAD = 2000;

/** What of a day is known now, as a report made from it keeps it: `{ known: { phonea00000: 41 } }`. */
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
 * The day as it was known when the report was made. So the report can be made again byte for byte, whatever was said,
 * merged or learnt to read since.
 */
export function dayWhenSent(day: Day, sent: SentReport): Day {
  const unread = new Set(sent.from?.unread);
  const facts = [...day.facts, ...day.unknown].filter(({ id }) => wasKnown(sent, id));
  return foldDay(
    day.id,
    facts.map((fact) => (unread.has(fact.id) ? { ...fact, unknown: true } : fact)),
  );
}

function wasKnown(sent: SentReport, id: FactId): boolean {
  if (sent.from) return counterOf(id) <= (sent.from.known[writerOf(id)] ?? -1);
  return id !== sent.id && knew(sent, id);
}
