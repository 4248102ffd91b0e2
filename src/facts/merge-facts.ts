import type { FactId } from '../shared/ids.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { Envelope } from './kinds/envelope.ts';
import { isSameFact } from './stored.ts';

export interface Merge {
  /** New facts, each once, in order of ids. */
  readonly fresh: readonly Envelope[];
  /** How many incoming facts were already known. */
  readonly same: number;
}

/** In order of ids, which is the order of facts. */
export const byId = (one: { id: FactId }, other: { id: FactId }): number =>
  one.id < other.id ? -1 : Number(one.id > other.id);

/**
 * The union of two sets of facts by id. Compare stored facts with stored facts: a lifted one differs from its
 * original. If an id has two different bodies, fails with `fact-id-twice` and the `ids`, and nothing is
 * merged.
 */
export function mergeFacts(known: readonly Envelope[], incoming: readonly Envelope[]): Result<Merge> {
  const byTheirId = new Map(known.map((fact) => [fact.id, fact]));
  const fresh: Envelope[] = [];
  const disputed = new Set<FactId>();
  for (const fact of incoming) {
    const before = byTheirId.get(fact.id);
    if (!before) {
      byTheirId.set(fact.id, fact);
      fresh.push(fact);
    } else if (!isSameFact(before, fact)) disputed.add(fact.id);
  }
  if (disputed.size > 0) return fail({ code: 'fact-id-twice', ids: [...disputed].sort() });
  return ok({ fresh: fresh.sort(byId), same: incoming.length - fresh.length });
}
