import { knew } from '../../facts/kinds/envelope.ts';
import type { Day, Fact, FactId, FactOf } from '../model.ts';
import { latestSent, type SentReport, wasKnown } from './sent-reports.ts';

/** What the day was closed with: the last report that went out, or the wrap. */
export type Closing = SentReport | Wrapped;

export type Wrapped = FactOf<'day-wrapped'>;

/** An entry that a closing of the day did not know of. */
export interface Late {
  readonly closing: Closing;
  /** Said by somebody who knew of the closing; otherwise on a phone that had not heard of it yet. */
  readonly isSaidAfter: boolean;
}

/** Entries beside the log: they change nothing that anybody reads of the day. */
const BESIDE: ReadonlySet<Fact['kind']> = new Set<Fact['kind']>([
  'day-wrapped',
  'move-ticked',
  'report-sent',
  'phone-named',
  'writer-admitted',
  'writer-removed',
  'day-passed-on',
]);

/** The report first: what is not in it needs another one. */
const closingsOf = (day: Day): readonly Closing[] =>
  [latestSent(day), day.wrap].filter((closing) => closing !== undefined);

const knewOf = (closing: Closing, id: FactId): boolean =>
  closing.kind === 'report-sent' ? wasKnown(closing, id) : knew(closing, id);

/** What a closing of the day did not know of and still stands: taken back again, it is as if never said. */
export function entriesSince(day: Day, closing: Closing): { readonly fact: Fact; readonly late: Late }[] {
  return day.facts
    .filter(({ id, kind }) => !BESIDE.has(kind) && !day.takenBack.has(id) && !knewOf(closing, id))
    .filter((fact) => fact.kind !== 'fact-retracted' || fact.targets.some((id) => knewOf(closing, id)))
    .map((fact) => ({ fact, late: { closing, isSaidAfter: knew(fact, closing.id) } }));
}

/** How many entries came since, and how many of those from phones that had not heard. */
export function countSince(day: Day, closing: Closing): { readonly after: number; readonly unheard: number } {
  const entries = entriesSince(day, closing);
  const after = entries.filter(({ late }) => late.isSaidAfter).length;
  return { after, unheard: entries.length - after };
}

/** An entry of the line that is late itself, or about which something late was said. */
export interface LateOnLine extends Late {
  readonly isWhole: boolean;
}

/** What on the line is late, by the entry's id; of an entry late for both closings, the report counts. */
export function lateOnLine(day: Day): ReadonlyMap<FactId, LateOnLine> {
  const found = new Map<FactId, LateOnLine>();
  for (const closing of closingsOf(day))
    for (const { fact, late } of entriesSince(day, closing))
      for (const entry of entriesMeant(day, fact)) {
        const known = found.get(entry);
        if (!known || (!known.isWhole && entry === fact.id && known.closing === closing))
          found.set(entry, { ...late, isWhole: entry === fact.id });
      }
  return found;
}

/** The entries of the line that a fact is, or is about. */
function entriesMeant(day: Day, fact: Fact): readonly FactId[] {
  switch (fact.kind) {
    case 'take-described':
    case 'note-added':
      return [fact.take];
    case 'takes-joined':
      return [fact.into];
    case 'fact-moved':
      return [fact.target];
    case 'fact-retracted': {
      const targets = new Set(fact.targets);
      return day.facts.flatMap((one) => (targets.has(one.id) ? entriesMeant(day, one) : []));
    }
    default:
      return [fact.id];
  }
}
