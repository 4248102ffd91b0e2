import { type Envelope, isEnvelope } from './kinds/envelope.ts';

/**
 * The fact as stored and exported: without the `unknown` mark that reading adds, so that a newer app does not
 * find the mark in it.
 */
export function storedForm(fact: Envelope): Envelope {
  if (!('unknown' in fact) || fact.unknown !== true) return fact;
  const { unknown: _mark, ...stored } = fact;
  return stored;
}

/** Whether two facts have the same content: equal as JSON, whatever the order of fields. */
export const isSameFact = (one: Envelope, other: Envelope): boolean =>
  one === other || canonicalText(one) === canonicalText(other);

/** The fact as text: the same for the same content, whatever the order of fields. */
export const canonicalText = (fact: Envelope): string => orderedText(storedForm(fact));

/** JSON with object fields sorted. Built as text, so that a field called __proto__ is just a field. */
function orderedText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => orderedText(item)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, field]) => `${JSON.stringify(name)}:${orderedText(field)}`).join(',')}}`;
}

export interface Compared {
  /** Facts that are not stored, or stored differently. */
  readonly missing: readonly Envelope[];
  /** Stored under an id that none of the facts has. */
  readonly extra: readonly Envelope[];
}

/** Compares facts with `stored`, which comes straight off the disk and may be damaged. */
export function compareStored(facts: readonly Envelope[], stored: readonly unknown[]): Compared {
  const there = new Map(stored.filter(isEnvelope).map((fact) => [fact.id, fact]));
  const missing = facts.filter((fact) => {
    const same = there.get(fact.id);
    return !same || !isSameFact(same, fact);
  });
  for (const { id } of facts) there.delete(id);
  return { missing, extra: [...there.values()] };
}
