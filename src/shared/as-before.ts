type Data = Readonly<Record<string, unknown>>;

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null;

/** Whether two values say the same, part by part; for plain data that does not contain itself. */
function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (!isData(one) || !isData(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((item, at) => isSame(item, other[at]));
  const names = Object.keys(one);
  return (
    names.length === Object.keys(other).length &&
    names.every((name) => name in other && isSame(one[name], other[name]))
  );
}

/**
 * A list in which whatever says the same as in the list before is that very thing, and which is that very list if
 * all of it is: so what hardly changes is kept once, and worked on once.
 */
export function asBefore<Item>(made: readonly Item[], before: readonly Item[] | undefined): readonly Item[] {
  if (!before) return made;
  const each = made.map((item, at) => (isSame(item, before[at]) ? before[at]! : item));
  return each.length === before.length && each.every((item, at) => item === before[at]) ? before : each;
}
