import type { CellsDue, Reach } from '../../upkeep/due/batteries.ts';
import type { CardLeft } from '../../upkeep/due/card-left.ts';
import type { UpkeepNow } from '../../upkeep/due/day-due.ts';
import type { DueItem } from '../../upkeep/due/due-list.ts';
import type { JamDue } from '../../upkeep/due/jams.ts';
import { type MarkName, shareOf, type TimeScale } from './time-scale.ts';

/** The mark of the day that something does not last to; `tight` if only its reserve lasts. */
export interface Short {
  readonly to: MarkName;
  readonly how: 'out' | 'tight';
}

/** How long something lasts from now: full until it is due, hollow over its reserve, and nothing after. */
export interface TimeBar {
  readonly dueShare: number;
  readonly endShare: number;
  /** It lasts longer than the scale shows. */
  readonly goesOn: boolean;
  /** What it falls short of, the nearest first. */
  readonly short: Short | undefined;
}

function bar(scale: TimeScale, dueAtMs: number, endAtMs: number, short?: Short): TimeBar {
  return {
    dueShare: shareOf(scale, dueAtMs),
    endShare: shareOf(scale, endAtMs),
    goesOn: endAtMs > scale.endMs,
    short,
  };
}

const shortOf = (to: MarkName, reach: Reach | undefined): Short[] =>
  reach === undefined || reach === 'lasts' ? [] : [{ to, how: reach === 'runs-out' ? 'out' : 'tight' }];

/** Cells from now to flat, against meal and wrap. */
export function batteryBar(scale: TimeScale, { dueAtMs, emptyAtMs, toMeal, toWrap }: CellsDue): TimeBar {
  const ahead = scale.marks.flatMap(({ name }) => shortOf(name, name === 'meal' ? toMeal : toWrap));
  // What runs flat matters more than what gets there on the reserve.
  return bar(scale, dueAtMs, emptyAtMs, ahead.find(({ how }) => how === 'out') ?? ahead[0]);
}

/** A card from now to full at the day's pace; none where no pace can tell. */
export function cardBar(scale: TimeScale, { dueAtMs, fullAtMs, lastsToWrap }: CardLeft): TimeBar | undefined {
  if (dueAtMs === undefined || fullAtMs === undefined) return undefined;
  const wrap = scale.marks.find(({ name }) => name === 'wrap');
  const short: Short | undefined =
    lastsToWrap === false && wrap ? { to: 'wrap', how: fullAtMs <= wrap.atMs ? 'out' : 'tight' } : undefined;
  return bar(scale, dueAtMs, fullAtMs, short);
}

/** A jam from now to the moment its clock may be a frame off; none where nothing can drift. */
export const jamBar = (scale: TimeScale, { dueAtMs }: JamDue): TimeBar | undefined =>
  dueAtMs === undefined ? undefined : bar(scale, dueAtMs, dueAtMs);

/** The bar of something on the due list, from the same answer as its words. */
export function barOf(
  scale: TimeScale,
  { cells, jams, cards }: UpkeepNow,
  { kind, name }: Pick<DueItem, 'kind' | 'name'>,
): TimeBar | undefined {
  switch (kind) {
    case 'cells': {
      const found = cells.due.find(({ device }) => device === name);
      return found && batteryBar(scale, found);
    }
    case 'jam': {
      const found = jams.due.find(({ device }) => device === name);
      return found && jamBar(scale, found);
    }
    case 'card': {
      const found = cards.find(({ card }) => card.id === name);
      return found?.left.ok ? cardBar(scale, found.left.value) : undefined;
    }
  }
}
