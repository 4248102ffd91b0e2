/** What every output prints for a take before the first roll was entered. */
export const NO_ROLL = 'no roll';

export interface RollWords {
  /** The roll of the take in a table. */
  readonly rollWord: string;
  /** Printed before the take if its roll differs from the previous take's: `'Roll 7A'`; otherwise empty. */
  readonly rollHeading: string;
}

/**
 * The takes with their rolls in words. A day without rolls does not mention them; a single roll for all takes
 * appears only in the head.
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
