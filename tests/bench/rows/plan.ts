import { run as assignments } from '../assignment.ts';
import { run as plans } from '../assignment-plan.ts';
import type { Row } from '../row.ts';

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
  return [...pairs, ...planned];
}
