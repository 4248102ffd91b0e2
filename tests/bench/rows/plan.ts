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
  const planned = plans().map(({ name, medianMs, exact, rigs }): Row => {
    const isLargest = /^24 performers|16 needed on 16|24 needed on 16 tracks, fixed/.test(name);
    return {
      work: `plan: ${name}, ${exact} of ${rigs} proven`,
      ours: medianMs,
      unit: 'ms',
      ...(isLargest && { budget: 16 }),
    };
  });
  return [...pairs, ...planned];
}
