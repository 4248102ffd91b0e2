import type { How } from '../cells/how-found.ts';
import { tidyName } from '../cells/sheet-names.ts';
import type { CallTimes } from './call-times.ts';
import type { Names } from './cast-line.ts';
import type { Order } from './cast-order.ts';

/** A performer from a call-sheet line; `line` counts from 1. */
export interface CastEntry {
  readonly number: string;
  readonly part: string;
  readonly person: string;
  readonly pickUp?: string;
  readonly onSet?: string;
  readonly line: number;
  /** False if it was guessed which name is the part, or where one ends and the next begins. */
  readonly sure: boolean;
}

export const CAST_CELLS = ['number', 'part', 'person', 'pickUp', 'onSet'] as const;
export type CastCell = (typeof CAST_CELLS)[number];

/** The same with the times of the day, and how each cell was found. */
export interface SheetPerformer extends CastEntry {
  readonly pickUp: string;
  readonly onSet: string;
  /** Further lines of the row. */
  readonly more: readonly number[];
  /** For each cell that holds something. */
  readonly how: Readonly<Partial<Record<CastCell, How>>>;
}

export interface Read {
  readonly names: Names;
  readonly times: CallTimes;
  /** Its cells are set apart from each other. */
  readonly isApart: boolean;
  /** From the heading above. */
  readonly order: Order | null;
}

export interface Found extends Read {
  readonly line: number;
  readonly text: string;
  readonly more: readonly number[];
}

/** The order most lines agree on; `agreed` if enough of them do to trust one more likely line. */
export interface Usual {
  readonly order: Order | null;
  readonly agreed: boolean;
}

export function usualOrder(found: readonly Found[]): Usual {
  const pairs = found
    .map(({ names }) => names)
    .filter(({ second, order }) => second !== '' && order !== null);
  const looks = agreed(pairs.filter(({ sign }) => sign === 'looks'));
  const all = agreed(pairs);
  return { order: all.order ?? looks.order, agreed: looks.count >= 2 || all.count >= 3 };
}

function agreed(names: readonly Names[]): { order: Order | null; count: number } {
  const [first] = names;
  const agree = first !== undefined && names.every(({ order }) => order === first.order);
  return agree ? { order: first.order, count: names.length } : { order: null, count: 0 };
}

export function entryOf({ line, names, order: named, times, more }: Found, usual: Usual): SheetPerformer {
  const order = names.sign === 'worded' ? names.order : (named ?? names.order ?? usual.order);
  const turned = order === 'person-first' && names.second !== '';
  const [part, person] = turned ? [names.second, names.first] : [names.first, names.second];
  // Names that contradict their heading are left for a person to check.
  const contrary = named !== null && names.order !== null && names.sign !== 'worded' && names.order !== named;
  const believed = named !== null || (names.sign === 'likely' && usual.agreed && order === usual.order);
  const known = names.second === '' || names.sign === 'worded' || names.sign === 'looks' || believed;
  const sure = names.clear && known && !contrary;
  // Rows under named columns are worded.
  const how: How = !sure ? 'guessed' : named !== null || names.isRow ? 'heading' : 'shape';
  const cells = {
    number: names.number,
    part: tidyName(part),
    person: tidyName(person),
    pickUp: times.pickUp,
    onSet: times.onSet,
  };
  const found: Record<CastCell, How> = {
    number: names.isRow ? 'heading' : 'shape',
    part: how,
    person: how,
    pickUp: times.how,
    onSet: times.how,
  };
  const filled = CAST_CELLS.filter((cell) => cells[cell] !== '').map((cell) => [cell, found[cell]] as const);
  return { ...cells, line, more, sure, how: Object.fromEntries(filled) };
}
