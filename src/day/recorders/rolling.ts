import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { rollingIn, writesOfItem } from '../chain/links.ts';
import type { Day, PartId, TakeId, Write } from '../model.ts';

/** A recorder of the day. One besides the first records what the first one does. */
export interface Recorder {
  readonly id: PartId;
  readonly name: string;
}

/** The first recorder, which the head of the day names, and those added to it. */
export function recordersOf({ rig, header }: Pick<Day, 'rig' | 'header'>): Recorder[] {
  const first = { id: FIRST_RECORDER, name: (header.recorder ?? '').trim() || 'Recorder' };
  return [first, ...rig.recorders.map(({ id, name }) => ({ id, name }))];
}

/** What the line says of who rolls at each take; null until something is said. */
const remembered = new WeakMap<Day, ReadonlyMap<TakeId, readonly PartId[] | null>>();

/** Walks the line once for all takes: to ask for the links of each would take far longer. */
function saidAtTakes(day: Day): ReadonlyMap<TakeId, readonly PartId[] | null> {
  const known = remembered.get(day);
  if (known) return known;
  const takes = new Map<TakeId, readonly PartId[] | null>();
  let said: readonly PartId[] | null = null;
  for (const item of rollingIn(day.tail) ? day.line : []) {
    if (item.fact.kind === 'take-logged') takes.set(item.fact.id, said);
    if (item.fact.kind !== 'recorders-rolling') continue;
    for (const [, value] of writesOfItem(item, []) as readonly Write<readonly PartId[]>[]) said = value;
  }
  remembered.set(day, takes);
  return takes;
}

/** The recorders of the day among these; the first one if none of them is left. */
function standing(day: Day, said: readonly PartId[] | null | undefined): Recorder[] {
  const all = recordersOf(day);
  const rolling = all.filter(({ id }) => said?.includes(id));
  return rolling.length > 0 ? rolling : all.slice(0, 1);
}

/** The recorders that a take is on, the first one first. */
export const rollingAtTake = (day: Day, take: TakeId): Recorder[] =>
  standing(day, saidAtTakes(day).get(take));

/** The recorders that roll now. */
export const rollingNow = (day: Day): Recorder[] => standing(day, rollingIn(day.tail)?.value);

/** The same just before a take, or now if none is given: where a new change will go. */
export const rollingBefore = (day: Day, take: TakeId | undefined): Recorder[] =>
  take === undefined ? rollingNow(day) : rollingAtTake(day, take);
