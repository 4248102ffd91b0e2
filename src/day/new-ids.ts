import type { Day } from './model.ts';

/** The longest an id may be; see `idText`. */
const LONGEST_ID = 64;
const ROOM_FOR_NUMBER = 6;

/**
 * Returns ids never used on this day, not even by removed or retracted items: the requested one, or that with
 * a number. Facts about a part are kept by id, so reusing one would bring back another part's facts.
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

/** Every text in any fact of a day: a superset of the ids in use, whatever kind of fact they are in. */
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
