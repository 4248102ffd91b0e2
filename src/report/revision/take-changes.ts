import type { TakeId } from '../../day/model.ts';
import type { ReportModel } from '../model.ts';
import { statusWords } from '../printed/words.ts';
import type { TakeLine } from '../take-lines.ts';
import type { Change } from './change.ts';
import { isElsewhere, type TakeField, takeFields } from './take-fields.ts';

/** The differences between takes, matched by id: removed, added, moved and changed. */
export function takeChanges(was: ReportModel, is: ReportModel): Change[] {
  const before = sideOf(was);
  const after = sideOf(is);
  return [
    ...only(before, after).map((take) => whole('gone', before, take, summaryOf(take), '')),
    ...only(after, before).map((take) => whole('added', after, take, '', summaryOf(take))),
    ...moved(before, after),
    ...changed(before, after),
  ];
}

interface Side {
  readonly takes: readonly TakeLine[];
  readonly byId: ReadonlyMap<TakeId, TakeLine>;
  /** `'24B/3'`; with its start if another take has the same name: `'24B/3 (10:00:00:00)'`. */
  readonly nameOf: (take: TakeLine) => string;
}

function sideOf({ takes }: ReportModel): Side {
  const once = new Set<string>();
  const twice = new Set<string>();
  for (const { text } of takes) (once.has(text) ? twice : once).add(text);
  return {
    takes,
    byId: new Map(takes.map((take) => [take.takeId, take])),
    nameOf: ({ text, start }) => (twice.has(text) && start ? `${text} (${start})` : text),
  };
}

const only = ({ takes }: Side, other: Side): TakeLine[] =>
  takes.filter(({ takeId }) => !other.byId.has(takeId));
const shared = ({ takes }: Side, other: Side): TakeLine[] =>
  takes.filter(({ takeId }) => other.byId.has(takeId));

const whole = (kind: Change['kind'], side: Side, take: TakeLine, was: string, is: string): Change => ({
  part: 'take',
  kind,
  what: side.nameOf(take),
  field: '',
  was,
  is,
  takes: [take.takeId],
});

const summaryOf = (take: TakeLine): string =>
  [take.file, take.start, take.length, ...statusWords(take)].filter(Boolean).join(' ') || take.text;

/** Takes whose order changed among those in both reports. */
function moved(before: Side, after: Side): Change[] {
  const old = shared(before, after);
  const now = shared(after, before);
  const rank = new Map(old.map(({ takeId }, at) => [takeId, at]));
  const stays = stayingInOrder(now.map(({ takeId }) => rank.get(takeId)!));
  const place = (side: Side, list: readonly TakeLine[], at: number) =>
    at > 0 ? `after ${side.nameOf(list[at - 1]!)}` : 'first';
  return now.flatMap((take, at): Change[] => {
    if (stays.has(at)) return [];
    const was = place(before, old, rank.get(take.takeId)!);
    return [{ ...whole('changed', after, take, was, place(after, now, at)), field: 'place' }];
  });
}

/** A change common to several takes is one line. */
function changed(before: Side, after: Side): Change[] {
  const found = new Map<string, { field: string; was: string; is: string; at: number[] }>();
  for (const [at, take] of after.takes.entries()) {
    const old = before.byId.get(take.takeId);
    for (const change of old ? fieldChanges(old, take) : []) {
      const key = JSON.stringify(change);
      const known = found.get(key);
      if (known) known.at.push(at);
      else found.set(key, { ...change, at: [at] });
    }
  }
  return [...found.values()].map(({ at, ...change }) => ({
    part: 'take',
    kind: 'changed',
    what: takesText(after, at),
    ...change,
    takes: at.map((place) => after.takes[place]!.takeId),
  }));
}

function fieldChanges(old: TakeLine, take: TakeLine): { field: string; was: string; is: string }[] {
  const before = takeFields(old);
  const after = takeFields(take);
  const ids = new Set([...after.keys(), ...before.keys()]);
  const isOther = (id: string): boolean => before.get(id)?.key !== after.get(id)?.key;
  return [...ids].filter(isOther).flatMap((id) => {
    // The end follows from the start and the length, and is told only where neither tells it.
    if (id === 'end' && (isOther('start') || isOther('length'))) return [];
    const was = before.get(id);
    const is = after.get(id);
    if (isElsewhere((was ?? is)!, old) || isElsewhere((was ?? is)!, take)) return [];
    return [{ field: (was ?? is)!.title, ...apart(was, is) }];
  });
}

/** Both sides in words that differ. */
function apart(was: TakeField | undefined, is: TakeField | undefined): { was: string; is: string } {
  if (was && is && was.number !== is.number)
    return { was: `${was.number}: ${was.text}`, is: `${is.number}: ${is.text}` };
  if (was?.text !== is?.text) return { was: was?.text ?? '', is: is?.text ?? '' };
  if (was?.closer !== is?.closer) return { was: was?.closer ?? '', is: is?.closer ?? '' };
  return { was: was?.text ?? '', is: `another ${is?.text}` };
}

/** A run of takes by its ends. */
function takesText({ takes, nameOf }: Side, at: readonly number[]): string {
  const first = at[0]!;
  const last = at.at(-1)!;
  if (at.length > 3 && last - first === at.length - 1) {
    return `${nameOf(takes[first]!)} to ${nameOf(takes[last]!)} (${at.length} takes)`;
  }
  return at.map((place) => nameOf(takes[place]!)).join(', ');
}

/**
 * Indexes of a longest increasing run (patience sorting): everything else has moved. `stayingInOrder([0, 2,
 * 3, 1])` holds 0, 1, 2.
 */
export function stayingInOrder(ranks: readonly number[]): Set<number> {
  /** For every length, the index that ends the lowest run of it. */
  const ends: number[] = [];
  const before: (number | undefined)[] = [];
  for (const [at, rank] of ranks.entries()) {
    let length = 0;
    let high = ends.length;
    while (length < high) {
      const middle = (length + high) >> 1;
      if (ranks[ends[middle]!]! < rank) length = middle + 1;
      else high = middle;
    }
    before[at] = ends[length - 1];
    ends[length] = at;
  }
  const staying = new Set<number>();
  for (let at = ends.at(-1); at !== undefined; at = before[at]) staying.add(at);
  return staying;
}
