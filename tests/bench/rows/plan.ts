import { run as assignments } from '../assignment.ts';
import { run as plans } from '../assignment-plan.ts';
import type { Row } from '../row.ts';
import { setupsOnTwo, type UnitMeasure, unitMoves } from '../unit-move.ts';

export function rows(): Row[] {
  const measured = assignments();
  const pairs = measured.flatMap((one, at): Row[] =>
    at % 2 === 1
      ? []
      : [
          {
            work: `plan: ${one.name} (seeds 7 to 15)`,
            ours: one.ms,
            unit: 'ms',
            other: { by: 'munkres', value: measured[at + 1]!.ms },
            ratioBudget: 1,
          },
        ],
  );
  const planned = plans().map(({ name, slowestMs, budgetMs, proven, rigs }): Row => {
    const isProven = proven === undefined ? '' : `, ${proven} proven in every order`;
    return {
      work: `plan: ${name}, the slowest of ${rigs}${isProven}`,
      ours: slowestMs,
      unit: 'ms',
      ...(budgetMs !== undefined && { budget: budgetMs }),
    };
  });
  const on = '24 voices on two recorders of 32 tracks';
  return [
    ...pairs,
    ...planned,
    ...onTwo(`plan: the unit moves, ${on}`, unitMoves()),
    ...onTwo(`plan: the next setup, ${on}`, setupsOnTwo()),
  ];
}

/** A first answer that nobody waits for, and both recorders in full before anybody has read it. */
const FIRST_MS = 100;
const FULL_MS = 1000;

function onTwo(work: string, { firstMs, fullMs, proven, rigs }: UnitMeasure): Row[] {
  return [
    { work: `${work}, first answer, the slowest of ${rigs}`, ours: firstMs, unit: 'ms', budget: FIRST_MS },
    {
      work: `${work}, in full, the slowest of ${rigs}, ${proven} proven in every order`,
      ours: fullMs,
      unit: 'ms',
      budget: FULL_MS,
    },
  ];
}
