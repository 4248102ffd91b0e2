import { type Fact, isReadable, readFact, type UnknownFact } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { isSameFact } from '../facts/stored.ts';

/** Anything the store returns has a key, and so an id. */
export const hasId = (raw: unknown): raw is Envelope =>
  typeof raw === 'object' && raw !== null && 'id' in raw && 'day' in raw;

/** What can be read of a stored day, and how many facts cannot. */
export function readAll(stored: readonly unknown[]): { facts: (Fact | UnknownFact)[]; damaged: number } {
  const facts: (Fact | UnknownFact)[] = [];
  for (const raw of stored) {
    const read = readFact(raw);
    if (read.ok) facts.push(read.value);
  }
  return { facts, damaged: stored.length - facts.length };
}

/** Stored facts that are readable and differ from those held under the same ids. */
export function changedSince(held: readonly Envelope[], raw: readonly unknown[]): Envelope[] {
  const byId = new Map(held.map((fact) => [fact.id, fact]));
  return raw.filter(isReadable).filter((fact) => {
    const old = byId.get(fact.id);
    // Most have their fields in the same order, so comparing JSON first takes a tenth of the time.
    return old && JSON.stringify(old) !== JSON.stringify(fact) && !isSameFact(old, fact);
  });
}
