/**
 * Places of a longest rising run among the numbers (patience sorting): everything else has moved.
 * `stayingInOrder([0, 2, 3, 1])` holds 0, 1, 2.
 */
export function stayingInOrder(ranks: readonly number[]): Set<number> {
  /** For every length, the place that ends the lowest run of it. */
  const ends: number[] = [];
  const before: (number | undefined)[] = [];
  for (const [at, rank] of ranks.entries()) {
    let length = 0;
    let high = ends.length;
    while (length < high) {
      const middle = (length + high) >> 1;
      if (ranks[ends[middle]!]! < rank) length = middle + 1;
      else high = middle;
    }
    before[at] = ends[length - 1];
    ends[length] = at;
  }
  const staying = new Set<number>();
  for (let at = ends.at(-1); at !== undefined; at = before[at]) staying.add(at);
  return staying;
}
