import type { Envelope } from './envelope.ts';

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
