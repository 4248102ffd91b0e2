import type { FactOf } from '../../facts/fact.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { Take, TakeId } from '../model.ts';

/** Takes joined into another phone's log of the same take, each with that take. */
export type JoinedTakes = ReadonlyMap<TakeId, TakeId>;

/** The final take for each joined one, from the facts in order; joins that form a circle are ignored. */
export function joinedTakes(
  said: readonly FactOf<'takes-joined'>[],
  isTake: (id: TakeId) => boolean,
): JoinedTakes {
  const joined = new Map<TakeId, TakeId>();
  const endOf = (take: TakeId): TakeId => {
    const into = joined.get(take);
    return into === undefined ? take : endOf(into);
  };
  for (const { take, into } of said) {
    if (isTake(take) && isTake(into) && !joined.has(take) && endOf(into) !== take) joined.set(take, into);
  }
  return new Map([...joined.keys()].map((take) => [take, endOf(take)]));
}

/** What a joined take adds to the one it was joined into: its marks, and whatever is missing there. */
export function fieldsJoined(into: Take, said: TakeFields): TakeFields {
  const { circled, noGood, falseStart, tailSlate, start, length, cutAt, file } = said;
  const marks = { circled, noGood, falseStart, tailSlate };
  const missing = {
    ...(into.start === null && { start }),
    ...(into.length === null && { length, cutAt }),
    ...(into.file === null && { file }),
  };
  const fields = Object.entries({ ...marks, ...missing }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(fields) as TakeFields;
}

/** The same of how it was logged: that nobody marked it there takes no mark away. */
export function fieldsLogged(into: Take, logged: TakeFields): TakeFields {
  const fields = Object.entries(fieldsJoined(into, logged)).filter(([, value]) => value !== false);
  return Object.fromEntries(fields) as TakeFields;
}
