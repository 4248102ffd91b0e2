/** What every output prints for a take before the first roll was entered. */
export const NO_ROLL = 'no roll';

export interface RollWords {
  /** The roll of the take in a table. */
  readonly rollWord: string;
  /** Printed before the take if its roll or date is another than the previous take's: `'Roll 7A, 2026-11-20'`. */
  readonly rollHeading: string;
}

/**
 * The takes with their rolls in words. A day without rolls does not mention them; a single roll for all takes
 * appears only in the head. So do dates, unless the day went past midnight.
 */
export function withRollWords<Taken extends { readonly roll: string; readonly date: string }>(
  takes: readonly Taken[],
): (Taken & RollWords)[] {
  const rolls = new Set(takes.map(({ roll }) => roll));
  const isNamed = [...rolls].some(Boolean);
  const dates = new Set(takes.map(({ date }) => date));
  return takes.map((take, at) => {
    const before = takes[at - 1];
    const starts = !before || take.roll !== before.roll || take.date !== before.date;
    const heading = [
      ...(rolls.size > 1 ? [headingOf(take.roll)] : []),
      ...(dates.size > 1 ? [take.date] : []),
    ].join(', ');
    return {
      ...take,
      rollWord: take.roll || (isNamed ? NO_ROLL : ''),
      rollHeading: starts ? heading : '',
    };
  });
}

const headingOf = (roll: string): string => (roll ? `Roll ${roll}` : 'No roll');
