import type { Day, LineItem, TakeId } from '../model.ts';

/**
 * What holds at every take, from one walk along the line: to ask for the links of each would take far longer.
 * `after` gives what holds after an item, or the same again. Retracted takes are in it too.
 */
export function alongTakes<Held>(
  { line }: Pick<Day, 'line'>,
  atFirst: Held,
  after: (held: Held, item: LineItem) => Held,
): ReadonlyMap<TakeId, Held> {
  const byTake = new Map<TakeId, Held>();
  let held = atFirst;
  for (const item of line) {
    if (item.fact.kind === 'take-logged') byTake.set(item.fact.id, held);
    held = after(held, item);
  }
  return byTake;
}
