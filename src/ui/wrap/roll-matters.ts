import type { DayOutline } from '../../app/ports.ts';
import type { Day } from '../../day/model.ts';

/** Rolls whose name another real day on this phone also uses (iXML: a roll tells equal times apart). */
export function rollMatters(day: Day, days: readonly DayOutline[]): string[] {
  const rolls = new Set(day.rolls);
  return days
    .filter(({ id, sample }) => id !== day.id && !sample && !day.header.sample)
    .flatMap(({ label, date, rolls: others = [] }) =>
      others
        .filter((roll) => rolls.has(roll))
        .map((roll) =>
          `Roll ${roll} is also a roll of ${[label, date].filter(Boolean).join(', ') || 'another day'}.`.slice(
            0,
            200,
          ),
        ),
    )
    .slice(0, 20);
}
