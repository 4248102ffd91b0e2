/** What every output says of a take before the first roll was named. */
export const NO_ROLL = 'no roll';

export interface RollWords {
  /** The roll of the take in a table. */
  readonly rollWord: string;
  /** What stands before the take, where its roll is not that of the take before: `'Roll 7A'`; empty elsewhere. */
  readonly rollHeading: string;
}

/**
 * The takes with their rolls in words. On a day of which no roll was named nothing is said of rolls; one roll for all
 * takes stands in the head alone.
 */
export function withRollWords<Taken extends { readonly roll: string }>(
  takes: readonly Taken[],
): (Taken & RollWords)[] {
  const rolls = new Set(takes.map(({ roll }) => roll));
  const isNamed = [...rolls].some(Boolean);
  return takes.map((take, at) => {
    const starts = rolls.size > 1 && (at === 0 || take.roll !== takes[at - 1]!.roll);
    return {
      ...take,
      rollWord: take.roll || (isNamed ? NO_ROLL : ''),
      rollHeading: starts ? headingOf(take.roll) : '',
    };
  });
}

const headingOf = (roll: string): string => (roll ? `Roll ${roll}` : 'No roll');
