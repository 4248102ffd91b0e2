import type { Fact } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';

/**
 * The facts that are taken back. A retraction can itself be taken back; it only ever speaks of facts with lower ids,
 * so the highest decides first.
 */
export function factsTakenBack(facts: readonly Fact[]): Set<FactId> {
  const back = new Set<FactId>();
  for (let index = facts.length - 1; index >= 0; index -= 1) {
    const fact = facts[index]!;
    if (fact.kind !== 'fact-retracted' || back.has(fact.id)) continue;
    for (const target of fact.targets) if (target < fact.id) back.add(target);
  }
  return back;
}
