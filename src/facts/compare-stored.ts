import { type Envelope, isEnvelope } from './envelope.ts';
import { isSameFact } from './stored.ts';

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
