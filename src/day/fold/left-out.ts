import type { Fact, FactOf, UnknownFact } from '../../facts/fact.ts';
import { counterOf, databaseOf, type FactId } from '../../shared/ids.ts';

/** From after one counter up to another, which a later admission of the same phone set. */
type Span = readonly [after: number, upTo: number];
type Said = FactOf<'writer-admitted'> | FactOf<'writer-removed'>;

/** Whether what a phone said is left out, because it came after the phone was removed from the day. */
export type IsLeftOut = (id: FactId) => boolean;

/**
 * What removed phones said later, judged by the facts alone, so that every phone leaves out the same whichever it heard
 * first. Undefined on a day from which none was removed. That the owner said so is checked where sealed batches come in;
 * of a day file nobody knows, so what it would bring is shown before it is imported.
 */
export function leftOutOf(facts: readonly (Fact | UnknownFact)[]): IsLeftOut | undefined {
  if (!facts.some(({ kind }) => kind === 'writer-removed')) return undefined;
  const spans = new Map<string, Span[]>();
  const said = facts.filter(
    (fact): fact is Said =>
      (fact.kind === 'writer-admitted' || fact.kind === 'writer-removed') && !('unknown' in fact),
  );
  for (const statement of said.sort((one, other) => one.number - other.number)) {
    const own = spans.get(statement.database) ?? [];
    const now: Span[] =
      statement.kind === 'writer-removed'
        ? [...own, [statement.upTo, Number.POSITIVE_INFINITY]]
        : endedAt(own, counterOf(statement.id));
    spans.set(statement.database, now);
  }
  return (id) => {
    const counter = counterOf(id);
    return (spans.get(databaseOf(id)) ?? []).some(([after, upTo]) => counter > after && counter <= upTo);
  };
}

/** A phone that is admitted again counts from there on; it has seen its admission. */
const endedAt = (spans: readonly Span[], counter: number): Span[] =>
  spans.map(([after, upTo]) => [after, Math.min(upTo, counter)]);
