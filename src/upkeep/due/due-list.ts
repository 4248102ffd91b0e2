import type { Problem } from '../../shared/result.ts';
import { byName, type DueAction } from '../due-action.ts';
import type { CellsDue, CellsPlan, Reach } from './batteries.ts';
import type { CardLeft } from './card-left.ts';
import type { JamDue, JamPlan } from './jams.ts';

export type DueKind = 'cells' | 'jam' | 'card';

/** Why something is on the list: a code that becomes a sentence, and the data for it. */
export type DueReason =
  | { readonly code: 'cells-margin'; readonly emptyAtMs: number }
  | { readonly code: 'cells-empty'; readonly emptyAtMs: number }
  | { readonly code: 'cells-not-to-meal' | 'cells-not-to-wrap'; readonly reach: Exclude<Reach, 'lasts'> }
  | { readonly code: 'runtime-only-planned' }
  | { readonly code: 'drift'; readonly from: string; readonly driftFrames: number; readonly sinceMs: number }
  | { readonly code: 'card-left'; readonly hoursLeft: number }
  | { readonly code: 'card-not-to-wrap'; readonly fullAtMs: number };

export interface DueItem {
  readonly kind: DueKind;
  readonly name: string;
  /** Missing if there is no foreseeable moment. */
  readonly dueAtMs?: number;
  readonly action: DueAction;
  readonly reasons: readonly DueReason[];
}

export interface DueList {
  readonly items: readonly DueItem[];
  readonly unknown: readonly { readonly kind: DueKind; readonly name: string; readonly problem: Problem }[];
}

/**
 * Cells, jams and cards in one list, soonest due first, each with its reasons; what has no moment comes last,
 * then by name. Actions are as planned: nothing says `now` if the plans were made with a take open.
 */
export function dueList(plans: {
  readonly nowMs: number;
  readonly cells: CellsPlan;
  readonly jams: JamPlan;
  readonly cards: readonly CardLeft[];
}): DueList {
  const items: DueItem[] = [
    ...plans.cells.due.map((cells) => cellsItem(cells, plans.nowMs)),
    ...plans.jams.due.map(jamItem),
    ...plans.cards.map(cardItem),
  ];
  items.sort(
    (a, b) =>
      (a.dueAtMs ?? Number.MAX_VALUE) - (b.dueAtMs ?? Number.MAX_VALUE) ||
      byName(a.name, b.name) ||
      byName(a.kind, b.kind),
  );
  return {
    items,
    unknown: [
      ...plans.cells.unknown.map(({ device, problem }) => ({
        kind: 'cells' as const,
        name: device,
        problem,
      })),
      ...plans.jams.unknown.map(({ device, problem }) => ({ kind: 'jam' as const, name: device, problem })),
    ],
  };
}

function cellsItem(cells: CellsDue, nowMs: number): DueItem {
  const { device, dueAtMs, emptyAtMs, toMeal, toWrap, basis, action } = cells;
  const reasons: DueReason[] = [{ code: emptyAtMs <= nowMs ? 'cells-empty' : 'cells-margin', emptyAtMs }];
  if (toMeal && toMeal !== 'lasts') reasons.push({ code: 'cells-not-to-meal', reach: toMeal });
  if (toWrap && toWrap !== 'lasts') reasons.push({ code: 'cells-not-to-wrap', reach: toWrap });
  if (basis === 'planned') reasons.push({ code: 'runtime-only-planned' });
  return { kind: 'cells', name: device, dueAtMs, action, reasons };
}

function jamItem(jam: JamDue): DueItem {
  const { device, from, driftFrames, jammedAtMs, dueAtMs, action } = jam;
  const reason: DueReason = { code: 'drift', from, driftFrames, sinceMs: jammedAtMs };
  return {
    kind: 'jam',
    name: device,
    ...(dueAtMs !== undefined && { dueAtMs }),
    action,
    reasons: [reason],
  };
}

function cardItem(card: CardLeft): DueItem {
  const { hoursLeft, lastsToWrap, dueAtMs, fullAtMs, action } = card;
  const reasons: DueReason[] = [{ code: 'card-left', hoursLeft }];
  if (lastsToWrap === false && fullAtMs !== undefined) reasons.push({ code: 'card-not-to-wrap', fullAtMs });
  return {
    kind: 'card',
    name: card.card,
    ...(dueAtMs !== undefined && { dueAtMs }),
    action,
    reasons,
  };
}

/** Things of one kind due in the same minute for the same reasons: one line, one tap. */
export interface DueGroup {
  readonly names: readonly string[];
  readonly item: DueItem;
}

/** Groups neighbours of a due list, in order: three packs fresh together with one runtime are one. */
export function dueGroups(items: readonly DueItem[]): DueGroup[] {
  const groups: { names: string[]; item: DueItem }[] = [];
  for (const item of items) {
    const last = groups.at(-1);
    if (last && isAlike(last.item, item)) last.names.push(item.name);
    else groups.push({ names: [item.name], item });
  }
  return groups;
}

const minute = (ms: number | undefined): number => Math.floor((ms ?? -1) / 60_000);

const isAlike = (a: DueItem, b: DueItem): boolean =>
  a.kind === b.kind &&
  a.kind !== 'card' &&
  a.action === b.action &&
  minute(a.dueAtMs) === minute(b.dueAtMs) &&
  JSON.stringify(a.reasons) === JSON.stringify(b.reasons);
