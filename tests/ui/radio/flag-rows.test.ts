import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Flag, flagRows } from '../../../src/ui/radio/flag-rows.ts';

const WIDTH = 328;
const flag = (xPx: number, widthPx = 60): Flag => ({ xPx, widthPx });
const flags = fc.array(
  fc.record({
    xPx: fc.double({ min: 0, max: WIDTH, noNaN: true }),
    widthPx: fc.double({ min: 10, max: 180, noNaN: true }),
  }),
  { maxLength: 24 },
);

describe('the names over the carriers', () => {
  test('begin at their own lines, each above the names of the lines that it passes', () => {
    expect(flagRows([flag(20), flag(40), flag(60), flag(200)], WIDTH)).toEqual([
      { leftPx: 20, row: 2 },
      { leftPx: 40, row: 1 },
      { leftPx: 60, row: 0 },
      { leftPx: 200, row: 0 },
    ]);
  });

  test('are in order whatever the order of the carriers', () => {
    expect(flagRows([flag(60), flag(20)], WIDTH)).toEqual([
      { leftPx: 60, row: 0 },
      { leftPx: 20, row: 1 },
    ]);
  });

  test('move left at the right edge', () => {
    expect(flagRows([flag(320)], WIDTH)).toEqual([{ leftPx: 268, row: 0 }]);
  });

  test('are centred on fewer rows where a picture would be only names', () => {
    const many = Array.from({ length: 24 }, (_, at) => flag(10 + at * 13));
    const rows = flagRows(many, WIDTH).map(({ row }) => row);
    expect(Math.max(...rows)).toBeLessThan(10);
    expect(flagRows(many, WIDTH)[5]).toMatchObject({ leftPx: 10 + 5 * 13 - 30 });
  });

  test('never lie on each other and never leave the picture', () => {
    fc.assert(
      fc.property(flags, (some) => {
        const placed = flagRows(some, WIDTH);
        for (const [at, { leftPx, row }] of placed.entries()) {
          expect(leftPx).toBeGreaterThanOrEqual(0);
          expect(leftPx + some[at]!.widthPx).toBeLessThanOrEqual(WIDTH + 1e-9);
          for (const [other, there] of placed.entries()) {
            if (other <= at || there.row !== row) continue;
            const apart =
              leftPx + some[at]!.widthPx <= there.leftPx || there.leftPx + some[other]!.widthPx <= leftPx;
            expect(apart).toBe(true);
          }
        }
      }),
      { seed: 22 },
    );
  });

  test('are crossed by no line, away from the right edge and while there are few', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 200 }), { maxLength: 10 }), (xs) => {
        const some = [...new Set(xs)].map((xPx) => flag(xPx, 120));
        const placed = flagRows(some, WIDTH);
        for (const [at, { leftPx, row }] of placed.entries())
          for (const [other, there] of placed.entries()) {
            const { xPx } = some[other]!;
            if (other !== at && xPx > leftPx && xPx < leftPx + 120) expect(there.row).toBeLessThan(row);
          }
      }),
      { seed: 22 },
    );
  });
});
