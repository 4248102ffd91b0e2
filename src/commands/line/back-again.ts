import { key, linksAt, rollingIn, writesOfItem } from '../../day/chain/links.ts';
import type { Day, LineItem, Links, PartId } from '../../day/model.ts';
import { rollingIds } from '../../day/recorders/recorder-ids.ts';
import type { Draft } from '../../facts/fact.ts';
import { batchOf } from '../../facts/kinds/envelope.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { restored } from './restored-link.ts';

/** What it takes to be back where the unit came from. */
export interface WayBack {
  /** The recorders that rolled there. */
  readonly recorders: readonly PartId[];
  /** One for each thing to do, besides who rolls. */
  readonly moves: readonly Draft[];
}

/** The way back; null if the unit has not moved. */
export function wayBack(day: Day): WayBack | null {
  const moved = lastMove(day);
  if (!moved) return null;
  const before = linksAt(day, moved[0]!.place);
  const names = new Set(moved.flatMap((item) => writesOfItem(item, before.keys()).map(([name]) => name)));
  const by = new Set(moved.map(({ fact }) => fact.id));
  const moves = [...names]
    .filter((name) => by.has(day.tail.get(name)?.by ?? '') && isOther(day.tail, before, name))
    .flatMap((name) => restored(day, name, before, by) ?? []);
  return { recorders: rollingIds(day.rig, rollingIn(before)?.value), moves: distinct(moves) };
}

/**
 * Back where the unit came from, as one action: who rolled there rolls again, and what the move changed is as it
 * was before it, but for what somebody has changed since.
 */
export function backAgain(day: Day): CommandResult {
  const back = wayBack(day);
  if (!back) return fail({ code: 'unit-not-moved' });
  return ok([{ kind: 'recorders-rolling', recorders: [...back.recorders] }, ...back.moves]);
}

/** The items of the action that last changed the main recorder, in line order. */
function lastMove({ line, rig }: Day): LineItem[] | null {
  let main = rollingIds(rig, null)[0];
  let found: LineItem | undefined;
  for (const item of line) {
    if (item.takenBack || item.fact.kind !== 'recorders-rolling') continue;
    for (const [name, value] of writesOfItem(item, [])) {
      if (name !== key.rolling) continue;
      const next = rollingIds(rig, value as readonly PartId[])[0];
      if (next !== main) found = item;
      main = next;
    }
  }
  if (!found) return null;
  const batch = batchOf(found.fact);
  return line.filter(({ fact, takenBack }) => !takenBack && batchOf(fact) === batch);
}

const isOther = (now: Links, before: Links, name: string): boolean =>
  JSON.stringify(now.get(name)?.value) !== JSON.stringify(before.get(name)?.value);

function distinct(drafts: readonly Draft[]): Draft[] {
  return [...new Map(drafts.map((draft) => [JSON.stringify(draft), draft])).values()];
}
