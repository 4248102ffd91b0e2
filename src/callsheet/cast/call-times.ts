import type { How } from '../cells/how-found.ts';
import { cellsAt, clockTimesIn } from '../cells/sheet-cells.ts';
import type { Columns } from './cast-columns.ts';

/** When somebody is picked up and is to be on set, as written. */
export interface CallTimes {
  readonly pickUp: string;
  readonly onSet: string;
  readonly how: How;
}

export const NO_TIMES: CallTimes = { pickUp: '', onSet: '', how: 'shape' };

const LONGEST = 40;
const TIME = String.raw`(\d{1,2}[:.h]?\d{2}(?:\s*[ap]\.?m?\.?)?|\d{1,2}\s*[ap]\.?m\.?)`;
const PICKED_UP = new RegExp(String.raw`(?:p\/?u|pick[\s-]?up|collect|abholung)\.?\s*[:@]?\s*${TIME}`, 'i');
const ON_SET = new RegExp(String.raw`(?:on[\s-]?set|o\/s|am set|drehfertig)\.?\s*[:@]?\s*${TIME}`, 'i');

/** From columns that name them. */
export function timesInColumns(text: string, { delimiter, pickUp, onSet }: Columns): CallTimes {
  const cells = cellsAt(text, delimiter);
  const at = (index: number): string => {
    const cell = cells[index] ?? '';
    return /\d/.test(cell) && cell.length <= LONGEST ? cell : '';
  };
  return { pickUp: at(pickUp), onSet: at(onSet), how: 'heading' };
}

/** From a line alone: what is labelled; else, by a guess, the first time and the last. */
export function timesInLine(text: string): CallTimes {
  const [pickUp = '', onSet = ''] = [PICKED_UP, ON_SET].map((label) => label.exec(text)?.[1] ?? '');
  if (pickUp !== '' || onSet !== '') return { pickUp, onSet, how: 'shape' };
  const times = clockTimesIn(text);
  if (times.length === 0) return NO_TIMES;
  return { pickUp: times.length > 1 ? times[0]! : '', onSet: times.at(-1)!, how: 'guessed' };
}
