import type { FactOf } from '../facts/fact.ts';
import { knew } from '../facts/kinds/envelope.ts';
import { RATE_IDS } from '../facts/kinds/rate-ids.ts';
import { HIGHEST_TAKE, type TakeFields } from '../facts/kinds/take-logged.ts';
import { type FactId, isOfDatabase } from '../shared/ids.ts';
import { isOneOf } from '../shared/open-word.ts';
import type { Day, LineItem, Note, Open, Slate, Stamp, Take, TakeId, TakeKind, TakeSlate } from './model.ts';
import { isRead, nextSetup, sameSlate, slateText } from './slate.ts';

const NO_SLATE: Slate = { style: 'lettered', scene: '1', setup: 0 };

export function takeFrom(fact: FactOf<'take-logged'>): MutableTake {
  const blank: MutableTake = {
    id: fact.id,
    kind: 'take',
    slate: NO_SLATE,
    number: 1,
    start: null,
    length: null,
    rolledAt: undefined,
    cutAt: undefined,
    circled: false,
    noGood: false,
    falseStart: false,
    tailSlate: false,
    file: null,
    notes: [],
  };
  writeFields(blank, fact.fields);
  return blank;
}

/** A fact about one take. */
export type OfTake = FactOf<'take-described' | 'note-added'>;

/** A take during folding, before anybody holds it. */
export type MutableTake = { -readonly [Field in keyof Omit<Take, 'notes'>]: Take[Field] } & { notes: Note[] };

/** Applies a fact to a take. */
export function describeTake(take: MutableTake, fact: OfTake): void {
  if (fact.kind === 'take-described') writeFields(take, fact.fields);
  else take.notes.push({ id: fact.id, track: fact.track, text: fact.text });
}

/**
 * A foreign file may contain more fields than a take has, which must not overwrite its id or notes. A take is
 * circled or NG, not both: the later one counts, and NG if both come at once.
 */
function writeFields(take: MutableTake, fields: TakeFields): void {
  const { id, notes } = take;
  const { start, length, ...others } = fields;
  Object.assign(take, others);
  if (start !== undefined) [take.start, take.unreadStart] = readStamp(start);
  if (length !== undefined) [take.length, take.unreadLength] = readStamp(length);
  take.id = id;
  take.notes = notes;
  if (fields.noGood) take.circled = false;
  else if (fields.circled) take.noGood = false;
}

type SaidStamp = NonNullable<TakeFields['start']>;

/** A time, or its rate if this version does not know that rate. */
function readStamp(said: SaidStamp | null): [Stamp | null, Take['unreadStart']] {
  if (said === null) return [null, undefined];
  const { frames, rate } = said;
  return isOneOf(RATE_IDS, rate) ? [{ frames, rate }, undefined] : [null, rate];
}

/** A copy of the take with a fact applied. */
export function takeWith(take: Take, fact: OfTake): MutableTake {
  const described = { ...take, notes: [...take.notes] };
  describeTake(described, fact);
  return described;
}

/** The line item of a change or take, if there is one. */
export const itemOnLine = ({ line, takeItems }: Pick<Day, 'line' | 'takeItems'>, id: FactId) =>
  takeItems.get(id) ?? line.findLast(({ fact }) => fact.id === id);

/** The index of a take on the line; the end if it is not there. */
export const placeOfTake = ({ line, takeItems }: Pick<Day, 'line' | 'takeItems'>, id: TakeId): number =>
  takeItems.get(id)?.place ?? line.length;

/** Takes in line order, without retracted ones. */
export const takesInOrder = (day: Day): Take[] => day.takeOrder.map((id) => day.takes.get(id)!);

/** A take that rolled and has not been cut. */
export const isOpen = (take: Take): boolean =>
  take.rolledAt !== undefined && take.cutAt === undefined && take.length === null && !take.unreadLength;

export const lastTake = (day: Day): Take | undefined => day.takes.get(day.takeOrder.at(-1) ?? '');

/** Every open take in line order: one may have been left open, or two phones may be rolling. */
export function openTakes(day: Day): readonly Take[] {
  const known = openIn.get(day);
  if (known) return known;
  const open = takesInOrder(day).filter(isOpen);
  openIn.set(day, open);
  return open;
}

/** Cached: the dock, the lists and every clock tick ask for them. */
const openIn = new WeakMap<Day, readonly Take[]>();

/**
 * This phone's open take, which its Cut ends: the last on the line if there are several. `database` is
 * where this phone writes; without it there is only one phone.
 */
export const ownOpenTake = (day: Day, database?: string): Take | undefined =>
  openTakes(day).findLast(({ id }) => isSaidBy(id, database));

const isSaidBy = (id: FactId, database?: string): boolean =>
  database === undefined || isOfDatabase(id, database);

/** Wild tracks and room tones have their own numbering; all other kinds, even unknown, have a slate. */
export const isSlated = (kind: Open<TakeKind>): boolean => kind !== 'wild' && kind !== 'tone';

/**
 * The current slate: the last one called, or that of the last slated take. While this phone has an open take,
 * it is that take's, or one called here since, so that late entries or imports do not change it under the
 * finger. Nor does another phone's slate that was called without knowing of this one: that is two people
 * logging side by side.
 */
export function currentSlate(day: Day, database?: string): Slate {
  const rolling = ownOpenTake(day, database);
  const last = rolling ? placeOfTake(day, rolling.id) : day.line.length;
  const own = day.order && database ? lastSlated(day, (id) => isOfDatabase(id, database)) : undefined;
  const found = day.line.findLast((item) => {
    const slate = slateOf(day, item);
    if (!slate || isSaidBy(item.fact.id, database)) return slate && (item.place <= last || isCall(item));
    return item.place <= last && (!own || knew(item.fact, own.fact.id));
  });
  const slate = found && slateOf(day, found);
  if (slate) return slate;
  return day.header.slateStyle === 'numbered' ? { style: 'numbered', number: 1, scene: '' } : NO_SLATE;
}

const isCall = ({ fact }: LineItem): boolean => fact.kind === 'slate-called';

const lastSlated = (day: Day, isWanted: (id: FactId) => boolean): LineItem | undefined =>
  day.line.findLast((item) => isWanted(item.fact.id) && slateOf(day, item));

/** The slate that an item calls, or that of its slated take. */
function slateOf(day: Day, { fact, takenBack }: LineItem): Slate | undefined {
  if (takenBack) return undefined;
  if (fact.kind === 'slate-called') return fact.slate;
  const take = fact.kind === 'take-logged' ? day.takes.get(fact.id) : undefined;
  return take && isSlated(take.kind) && isRead(take.slate) ? take.slate : undefined;
}

/**
 * The number of the next take of this kind: one above the highest of its slate (or series, for wild tracks
 * and room tones). A false start frees its number.
 */
export function nextNumber(day: Day, kind: Open<TakeKind>, slate: TakeSlate): number {
  let highest = 0;
  for (const id of day.takeOrder) {
    const take = day.takes.get(id)!;
    if (take.falseStart || take.number <= highest) continue;
    if (isCountedWith(take, kind, slate)) highest = take.number;
  }
  return highest < HIGHEST_TAKE ? highest + 1 : firstFree(day, kind, slate);
}

const isCountedWith = (take: Take, kind: Open<TakeKind>, slate: TakeSlate): boolean =>
  isSlated(kind) ? isSlated(take.kind) && sameSlate(take.slate, slate) : take.kind === kind;

/** If somebody typed the highest possible number, Roll still needs one. */
function firstFree(day: Day, kind: Open<TakeKind>, slate: TakeSlate): number {
  const used = new Set(
    takesInOrder(day)
      .filter((take) => !take.falseStart && isCountedWith(take, kind, slate))
      .map(({ number }) => number),
  );
  let number = 1;
  while (used.has(number) && number < HIGHEST_TAKE) number += 1;
  return number;
}

export interface NextTake {
  readonly kind: TakeKind;
  readonly slate: Slate;
  readonly number: number;
}

export const nextTake = (day: Day, kind: TakeKind = 'take', slate = currentSlate(day)): NextTake => ({
  kind,
  slate,
  number: nextNumber(day, kind, slate),
});

/** The slate of the next setup: past every letter or number already used in this scene or day. */
export function slateAfter(day: Day, current = currentSlate(day)): Slate {
  const used = takesInOrder(day).filter(({ kind }) => isSlated(kind));
  let slate = nextSetup(current);
  while (used.some((take) => sameSlate(take.slate, slate))) slate = nextSetup(slate);
  return slate;
}

/** Takes that share a slate and number; false starts and pickups count separately. */
export function takesNumberedTwice(day: Day): Take[][] {
  const first = new Map<string, Take>();
  const groups = new Map<string, Take[]>();
  for (const take of takesInOrder(day)) {
    if (take.falseStart || take.kind === 'pickup' || !isRead(take.slate)) continue;
    const name = numberedAs(take);
    const other = first.get(name);
    if (!other) first.set(name, take);
    else groups.set(name, [...(groups.get(name) ?? [other]), take]);
  }
  return [...groups.values()];
}

const names = new WeakMap<Take, string>();

/** Slate and number, or series and number, as a string. Cached: a changed take is a new object. */
function numberedAs(take: Take): string {
  const known = names.get(take);
  if (known !== undefined) return known;
  const name = `${isSlated(take.kind) ? `slate ${slateText(take.slate)}` : take.kind}/${take.number}`;
  names.set(take, name);
  return name;
}
