import type { Envelope } from '../facts/envelope.ts';
import { isReadable } from '../facts/fact.ts';
import { isSameFact } from '../facts/stored.ts';

/** What is stored now and can be read, and says something else than what was held under its id. */
export function changedSince(held: readonly Envelope[], raw: readonly unknown[]): Envelope[] {
  const byId = new Map(held.map((fact) => [fact.id, fact]));
  return raw.filter(isReadable).filter((fact) => {
    const old = byId.get(fact.id);
    // Nearly all have their fields in the same order, and are told apart so in a tenth of the time.
    return old && JSON.stringify(old) !== JSON.stringify(fact) && !isSameFact(old, fact);
  });
}
