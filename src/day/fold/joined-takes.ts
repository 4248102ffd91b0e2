import type { FactOf } from '../../facts/fact.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { Take, TakeId } from '../model.ts';

/** Takes that are another take logged by another phone, each with the one that it is. */
export type JoinedTakes = ReadonlyMap<TakeId, TakeId>;

/** Which take each joined one is in the end, from what was said, in order; one that would be itself stays what it is. */
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

/** What is said of a joined take also holds for the one it is: its marks, and whatever that one does not have. */
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
