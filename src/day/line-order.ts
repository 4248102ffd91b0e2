import type { Fact } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';

const ON_THE_LINE: ReadonlySet<Fact['kind']> = new Set<Fact['kind']>([
  'take-logged',
  'slate-called',
  'transmitter-worn',
  'channels-tuned',
  'leads-plugged',
  'selectors-thrown',
  'inputs-sent',
  'mute-set',
  'gang-declared',
  'track-named',
  'voices-needed',
  'roll-changed',
  'voice-pinned',
  'out-marked',
  'moves-weighed',
]);

/** Whether a fact has a place on the line; the others hold for the whole day or speak of one take. */
export const isOnTheLine = (fact: Fact): boolean => ON_THE_LINE.has(fact.kind);

interface Placement {
  readonly before: FactId;
  /** The fact that put it there: among several before one take, the later said stands later. */
  readonly by: FactId;
}

/**
 * The order of the day: as things were said, but whatever was placed before a take stands just before it. A take
 * that was taken back still holds its place. `facts` are in the order of their ids.
 */
export function lineOrder(facts: readonly Fact[], takenBack: ReadonlySet<FactId>): Fact[] {
  const items = facts.filter(isOnTheLine);
  const placements = withoutCircles(placementsOf(facts, takenBack));
  if (placements.size === 0) return items;

  const placedBefore = new Map<FactId, Fact[]>();
  for (const item of items) {
    const placement = placements.get(item.id);
    if (!placement) continue;
    const group = placedBefore.get(placement.before);
    if (group) group.push(item);
    else placedBefore.set(placement.before, [item]);
  }
  for (const group of placedBefore.values()) {
    group.sort((a, b) => (placements.get(a.id)!.by < placements.get(b.id)!.by ? -1 : 1));
  }
  return walk(items, placements, placedBefore);
}

function placementsOf(facts: readonly Fact[], takenBack: ReadonlySet<FactId>): Map<FactId, Placement> {
  const placements = new Map<FactId, Placement>();
  const placing = facts.filter(({ kind, before }) => before !== undefined || kind === 'fact-moved');
  if (placing.length === 0) return placements;
  const spokenOf = new Set<FactId | null | undefined>();
  for (const fact of placing) {
    spokenOf.add(fact.before);
    if (fact.kind === 'fact-moved') spokenOf.add(fact.target).add(fact.to);
  }
  // Few facts of a long day are spoken of, so only these are looked up by what they are.
  const known = new Map(facts.filter(({ id }) => spokenOf.has(id)).map((fact) => [fact.id, fact]));
  const isTake = (id: FactId): boolean => known.get(id)?.kind === 'take-logged';
  for (const fact of placing) {
    if (fact.before && fact.before !== fact.id && isOnTheLine(fact) && isTake(fact.before)) {
      placements.set(fact.id, { before: fact.before, by: fact.id });
    }
    if (fact.kind !== 'fact-moved' || takenBack.has(fact.id)) continue;
    const target = known.get(fact.target);
    if (!target || !isOnTheLine(target)) continue;
    if (fact.to === null) placements.delete(fact.target);
    else if (fact.to !== fact.target && isTake(fact.to)) {
      placements.set(fact.target, { before: fact.to, by: fact.id });
    }
  }
  return placements;
}

/** Two phones can put two takes before each other; then the placement said first gives way. */
function withoutCircles(placements: Map<FactId, Placement>): Map<FactId, Placement> {
  const clear = new Set<FactId>();
  for (const start of placements.keys()) {
    const trail = new Set<FactId>();
    let at: FactId | undefined = start;
    while (at !== undefined && placements.has(at) && !clear.has(at)) {
      if (trail.has(at)) {
        const earliest = [...circleFrom(at, placements)].reduce((a, b) =>
          placements.get(a)!.by < placements.get(b)!.by ? a : b,
        );
        placements.delete(earliest);
        break;
      }
      trail.add(at);
      at = placements.get(at)!.before;
    }
    for (const id of trail) clear.add(id);
  }
  return placements;
}

function* circleFrom(start: FactId, placements: ReadonlyMap<FactId, Placement>): Generator<FactId> {
  let at = start;
  do {
    yield at;
    at = placements.get(at)!.before;
  } while (at !== start);
}

/** Depth first with a stack of its own: a stranger's file may nest placements as deep as it has takes. */
function walk(
  items: readonly Fact[],
  placements: ReadonlyMap<FactId, Placement>,
  placedBefore: ReadonlyMap<FactId, readonly Fact[]>,
): Fact[] {
  const order: Fact[] = [];
  for (const root of items) {
    if (placements.has(root.id)) continue;
    if (!placedBefore.has(root.id)) {
      order.push(root);
      continue;
    }
    const stack: { fact: Fact; ready: boolean }[] = [{ fact: root, ready: false }];
    while (stack.length > 0) {
      const { fact, ready } = stack.pop()!;
      const first = placedBefore.get(fact.id);
      if (ready || !first) {
        order.push(fact);
        continue;
      }
      stack.push({ fact, ready: true });
      for (const child of first.toReversed()) stack.push({ fact: child, ready: false });
    }
  }
  return order;
}
