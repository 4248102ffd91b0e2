import { SECOND_FORM } from './form.ts';

/** What every output prints for a take before the first roll was entered. */
export const NO_ROLL = 'no roll';

export interface RollWords {
  /** The roll of the take in a table. */
  readonly rollWord: string;
  /** Printed before the take if its roll, date or main recorder is another than the previous take's: `'Roll 7A, 2026-11-20'`. */
  readonly rollHeading: string;
}

/**
 * The takes with their rolls in words. A day without rolls does not mention them; a single roll for all takes
 * appears only in the head. So do dates, unless the day went past midnight, and recorders, unless another takes
 * over.
 */
export function withRollWords<Taken extends Rolled>(
  takes: readonly Taken[],
  form: number,
): (Taken & RollWords)[] {
  const rolls = new Set(takes.map(({ roll }) => roll));
  const isNamed = [...rolls].some(Boolean);
  const mains = form > SECOND_FORM ? mainNames(takes) : takes.map(() => '');
  const isChanging = new Set(mains).size > 1;
  const dates = new Set(takes.map(({ date }) => date));
  return takes.map((take, at) => {
    const before = takes[at - 1];
    const main = mains.at(at) ?? '';
    const starts =
      !before || take.roll !== before.roll || take.date !== before.date || main !== mains[at - 1];
    const heading = [
      ...(isChanging ? [main] : []),
      ...(rolls.size > 1 ? [headingOf(take.roll, isChanging)] : []),
      ...(dates.size > 1 ? [take.date] : []),
    ].join(', ');
    return {
      ...take,
      rollWord: take.roll || (isNamed ? NO_ROLL : ''),
      rollHeading: starts ? heading : '',
    };
  });
}

interface Rolled {
  readonly roll: string;
  readonly date: string;
  readonly recorders: readonly { readonly name: string }[];
}

/** The main recorder of each take; a setup without sound is on none and changes none. */
function mainNames(takes: readonly Rolled[]): string[] {
  let name = takes.flatMap(({ recorders }) => recorders)[0]?.name ?? '';
  return takes.map(({ recorders }) => {
    name = recorders[0]?.name ?? name;
    return name;
  });
}

function headingOf(roll: string, isAfterName: boolean): string {
  if (roll === '') return isAfterName ? NO_ROLL : 'No roll';
  return `${isAfterName ? 'roll' : 'Roll'} ${roll}`;
}
