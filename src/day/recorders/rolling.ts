import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { alongTakes } from '../chain/along-takes.ts';
import { key, rollingIn, writesOfItem } from '../chain/links.ts';
import type { Day, LineItem, PartId, Take, TakeId } from '../model.ts';
import { takesInOrder } from '../takes.ts';
import { rollingIds } from './recorder-ids.ts';

/** A recorder of the day. One without tracks of its own records what the first one does. */
export interface Recorder {
  readonly id: PartId;
  readonly name: string;
}

/** The first recorder, which the head of the day names, and those added to it. */
export function recordersOf({ rig, header }: Pick<Day, 'rig' | 'header'>): Recorder[] {
  const first = { id: FIRST_RECORDER, name: nameOfFirst(header) };
  return [first, ...rig.recorders.map(({ id, name }) => ({ id, name }))];
}

/** What the first recorder is called, in the head of the day or without a name. */
export const nameOfFirst = ({ recorder }: { readonly recorder?: string | undefined }): string =>
  recorder?.trim() || 'Recorder';

/** What the line says of the recorders at one place; null until it says who rolls. */
interface Said {
  readonly rolling: readonly PartId[] | null;
  /** The sound rolls, by their links. */
  readonly rolls: Readonly<Record<string, string>>;
}

const NOTHING: Said = { rolling: null, rolls: {} };

const remembered = new WeakMap<Day, ReadonlyMap<TakeId, Said>>();

function saidAtTakes(day: Day): ReadonlyMap<TakeId, Said> {
  const known = remembered.get(day);
  if (known) return known;
  const takes = alongTakes(day, NOTHING, saidAfter);
  remembered.set(day, takes);
  return takes;
}

function saidAfter(said: Said, item: LineItem): Said {
  const { kind } = item.fact;
  if (kind !== 'recorders-rolling' && kind !== 'roll-changed') return said;
  let { rolling, rolls } = said;
  for (const [name, value] of writesOfItem(item, [])) {
    if (name === key.rolling) rolling = value as readonly PartId[];
    else rolls = { ...rolls, [name]: value as string };
  }
  return { rolling, rolls };
}

/** The sound roll in a recorder at a take; empty if not entered. */
export const rollOn = (day: Day, take: TakeId, recorder: PartId): string =>
  saidAtTakes(day).get(take)?.rolls[key.roll(recorder)] ?? '';

/** The sound roll of a take: in the first of the recorders that it is on. */
export const rollOfTake = (day: Day, take: TakeId): string =>
  rollOn(day, take, rollingAtTake(day, take)[0]!.id);

/** The recorders of the day among these; the first one if none of them is left. */
function standing(day: Pick<Day, 'rig' | 'header'>, said: readonly PartId[] | null | undefined): Recorder[] {
  const rolling = rollingIds(day.rig, said);
  return recordersOf(day).filter(({ id }) => rolling.includes(id));
}

/** The recorders that a take is on, the first one first. */
export const rollingAtTake = (day: Day, take: TakeId): Recorder[] =>
  standing(day, saidAtTakes(day).get(take)?.rolling);

/** The first take that is on a recorder. */
export const firstTakeOn = (day: Day, recorder: PartId): Take | undefined =>
  takesInOrder(day).find(({ id }) => rollingAtTake(day, id).some((on) => on.id === recorder));

/** The recorders that roll now. */
export const rollingNow = (day: Pick<Day, 'rig' | 'header' | 'tail'>): Recorder[] =>
  standing(day, rollingIn(day.tail)?.value);

/** The same just before a take, or now if none is given: where a new change will go. */
export const rollingBefore = (day: Day, take: TakeId | undefined): Recorder[] =>
  take === undefined ? rollingNow(day) : rollingAtTake(day, take);

/** The main recorder of a take, the first of those that it is on: what is said of none in particular is of this. */
export const mainAtTake = (day: Day, take: TakeId): PartId =>
  day.rig.recorders.length === 0 ? FIRST_RECORDER : rollingAtTake(day, take)[0]!.id;

/** The main one of those that roll now. */
export const mainNow = (day: Pick<Day, 'rig' | 'header' | 'tail'>): PartId =>
  day.rig.recorders.length === 0 ? FIRST_RECORDER : rollingNow(day)[0]!.id;

/** Whether a take is on a recorder. */
export const isOnRecorder = (day: Day, take: TakeId, recorder: PartId): boolean =>
  day.rig.recorders.length === 0
    ? recorder === FIRST_RECORDER
    : rollingAtTake(day, take).some(({ id }) => id === recorder);
