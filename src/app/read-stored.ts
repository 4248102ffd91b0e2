import { type Fact, isReadable, readFact, type UnknownFact } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { isSameFact } from '../facts/stored.ts';

/** The store's own keys are in whatever comes out of it. */
export const hasId = (raw: unknown): raw is Envelope =>
  typeof raw === 'object' && raw !== null && 'id' in raw && 'day' in raw;

/** What is stored of a day as far as it can be read, and how much of it cannot. */
export function readAll(stored: readonly unknown[]): { facts: (Fact | UnknownFact)[]; damaged: number } {
  const facts: (Fact | UnknownFact)[] = [];
  for (const raw of stored) {
    const read = readFact(raw);
    if (read.ok) facts.push(read.value);
  }
  return { facts, damaged: stored.length - facts.length };
}

/** What is stored now and can be read, and says something else than what was held under its id. */
export function changedSince(held: readonly Envelope[], raw: readonly unknown[]): Envelope[] {
  const byId = new Map(held.map((fact) => [fact.id, fact]));
  return raw.filter(isReadable).filter((fact) => {
    const old = byId.get(fact.id);
    // Nearly all have their fields in the same order, and are told apart so in a tenth of the time.
    return old && JSON.stringify(old) !== JSON.stringify(fact) && !isSameFact(old, fact);
  });
}
