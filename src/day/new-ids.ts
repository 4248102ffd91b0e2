import type { Day } from './model.ts';

/** The longest an id may be; see `idText`. */
const LONGEST_ID = 64;
const ROOM_FOR_NUMBER = 6;

/**
 * Gives ids that nothing on this day ever had, also nothing that was struck or taken back: the one asked for, or that one
 * with a number. What is said of a part is kept under its id, so an id used again would bring back what was said of another.
 */
export function newIds(day: Day): (wanted: string) => string {
  const taken = textsOf(day);
  return (wanted) => {
    const stem = wanted.replace(/\.\d+$/, '').slice(0, LONGEST_ID - ROOM_FOR_NUMBER);
    let id = wanted;
    for (let number = 2; taken.has(id); number += 1) id = `${stem}.${number}`;
    taken.add(id);
    return id;
  };
}

/** Every text that was ever said on a day. Ids are among them, whatever kind of fact they stand in. */
function textsOf({ facts, unknown }: Day): Set<string> {
  const texts = new Set<string>();
  const left: unknown[] = [facts, unknown];
  while (left.length > 0) {
    const value = left.pop();
    if (typeof value === 'string') texts.add(value);
    else if (value !== null && typeof value === 'object')
      for (const one of Object.values(value)) left.push(one);
  }
  return texts;
}
