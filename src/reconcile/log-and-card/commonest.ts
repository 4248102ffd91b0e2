/** The most common value, the first of equals. Undefined if there is none. */
export function commonest<T>(values: readonly (T | undefined)[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) if (value !== undefined) counts.set(value, (counts.get(value) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return [...counts.keys()].find((value) => counts.get(value) === most);
}
