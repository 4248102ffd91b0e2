import type { Day } from './model.ts';

/** The sound rolls of a day by name, each once, in the order they stand on the line. */
export const rollsOf = (day: Day): string[] => [
  ...new Set(
    day.line.flatMap(({ fact, takenBack }) =>
      fact.kind === 'roll-changed' && !takenBack ? [fact.roll] : [],
    ),
  ),
];
