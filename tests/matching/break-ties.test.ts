import { expect, test } from 'vitest';
import { assign, FORBIDDEN } from '../../src/matching/assignment.ts';
import { seeded } from '../plan/random-rig.ts';

const columnsOf = (costs: number[][], columns: number): readonly number[] => {
  const found = assign({ rows: costs.length, columns, costs });
  if (!found.ok) throw new Error(found.problem.code);
  return found.value.columnOf;
};

// Sets of columns are kept 32 to a word; small matrices, proven by trying every assignment, fill one word only.
test.each([
  { kind: 'with as many rows as columns', fills: true },
  { kind: 'with columns to spare', fills: false },
])(
  'spread over a hundred columns in their order, ties break as they do close together, $kind (seed 61)',
  ({ fills }) => {
    const next = seeded(61);
    let apart = 0;
    for (let round = 0; round < 300; round += 1) {
      const size = 2 + next(5);
      const small = Array.from({ length: size }, () => Array.from({ length: size }, () => 1 + next(3)));
      const places = Array.from({ length: size }, (_value, at) => at * 16 + next(16));
      const spread = (row: number[]) => {
        const wide = new Array<number>(100).fill(FORBIDDEN);
        for (const [at, cost] of row.entries()) wide[places[at]!] = cost;
        return wide;
      };
      const others = Array.from({ length: 100 }, (_value, column) => column).filter(
        (column) => fills && !places.includes(column),
      );
      const only = (column: number) => new Array<number>(100).fill(FORBIDDEN).with(column, 2);
      const expected = columnsOf(small, size).map((column) => places[column]!);
      expect(columnsOf([...small.map(spread), ...others.map(only)], 100)).toEqual([...expected, ...others]);
      apart += expected.some((column) => column >= 32) ? 1 : 0;
    }
    expect(apart).toBeGreaterThan(200);
  },
);

test('where all pairs cost the same, every row has the column of its own number', () => {
  for (const [rows, columns] of [
    [70, 70],
    [33, 80],
  ] as const) {
    const costs = Array.from({ length: rows }, () => new Array<number>(columns).fill(1));
    expect(columnsOf(costs, columns)).toEqual(costs.map((_row, at) => at));
  }
});
