import { type Envelope, isEnvelope } from './kinds/envelope.ts';

/**
 * The fact as it is stored and exported: without the mark that reading puts on kinds it does not know, so that a
 * newer app, which knows the kind, does not find the mark in it.
 */
export function storedForm(fact: Envelope): Envelope {
  if (!('unknown' in fact) || fact.unknown !== true) return fact;
  const { unknown: _mark, ...stored } = fact;
  return stored;
}

/** Whether two facts say the same: equal as JSON, whatever the order of their fields. */
export const isSameFact = (one: Envelope, other: Envelope): boolean =>
  one === other || orderedText(storedForm(one)) === orderedText(storedForm(other));

/** JSON with the fields of every object in one order. Built as text, so a field called __proto__ is just a field. */
function orderedText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => orderedText(item)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, field]) => `${JSON.stringify(name)}:${orderedText(field)}`).join(',')}}`;
}

export interface Compared {
  /** Of the facts, those that are not stored, or not as they were said. */
  readonly missing: readonly Envelope[];
  /** Stored under an id that none of the facts has. */
  readonly extra: readonly Envelope[];
}

/** Facts and what is stored of them, one by one. `stored` is as it came off the disk, where anything may be damaged. */
export function compareStored(facts: readonly Envelope[], stored: readonly unknown[]): Compared {
  const there = new Map(stored.filter(isEnvelope).map((fact) => [fact.id, fact]));
  const missing = facts.filter((fact) => {
    const same = there.get(fact.id);
    return !same || !isSameFact(same, fact);
  });
  for (const { id } of facts) there.delete(id);
  return { missing, extra: [...there.values()] };
}
