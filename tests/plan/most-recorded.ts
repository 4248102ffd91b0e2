import type { PlanProblem } from '../../src/plan/plan-problem.ts';

/**
 * No plan records more voices than this: everybody who is recorded has a pack, a channel and an input that nobody else
 * has (a hardline voice: its own source and an input), so that there are no more than paths through these that share
 * nothing. Counted as a maximum flow of ones (Ford and Fulkerson 1956; from memory). It leaves out pins, and what else may
 * stand in the way: tracks, and positions of selectors.
 */
export function mostRecorded({ voices, transmitters, channels, inputs, paths }: PlanProblem): number {
  const room = new Map<string, Map<string, number>>();
  const add = (from: string, to: string): void => {
    const set = (a: string, b: string, units: number) =>
      room.set(a, (room.get(a) ?? new Map()).set(b, units));
    set(from, to, 1);
    if (!room.get(to)?.has(from)) set(to, from, 0);
  };
  const inOrder = <T extends { readonly out?: boolean }>(list: readonly T[]): T[] =>
    list.filter(({ out }) => !out);
  // What only one may have is an arc of one unit, from its way in to its way out.
  for (const { id } of [...inOrder(transmitters), ...inOrder(channels), ...inOrder(inputs)])
    add(`>${id}`, `${id}>`);
  for (const { id } of inOrder(transmitters)) {
    for (const channel of inOrder(channels)) {
      if (channel.tunedTo === id || !channel.canTune || channel.canTune.includes(id))
        add(`${id}>`, `>${channel.id}`);
    }
  }
  for (const { source, input } of inOrder(paths)) add(`${source}>`, `>${input}`);
  for (const { id } of inOrder(inputs)) add(`${id}>`, 'recorded');
  for (const { id, hardline } of voices.filter(({ needed }) => needed)) {
    if (hardline !== undefined) add(id, `${hardline}>`);
    else for (const pack of inOrder(transmitters)) add(id, `>${pack.id}`);
  }

  const push = (node: string, seen: Set<string>): boolean => {
    if (node === 'recorded') return true;
    seen.add(node);
    for (const [next, units] of room.get(node) ?? []) {
      if (units === 0 || seen.has(next) || !push(next, seen)) continue;
      room.get(node)!.set(next, units - 1);
      room.get(next)!.set(node, room.get(next)!.get(node)! + 1);
      return true;
    }
    return false;
  };
  return voices.filter(({ id, needed }) => needed && push(id, new Set())).length;
}
