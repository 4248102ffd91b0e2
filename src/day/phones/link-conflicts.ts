import type { FactId } from '../../shared/ids.ts';
import { isOtherSocket, switchedInputs } from '../chain/leads.ts';
import { HAD_PACK, linkOver, writesOfItem } from '../chain/links.ts';
import type { Day, Link, TakeId } from '../model.ts';

/** Phones that did not know of each other recorded different values for one link. */
export interface LinkConflict {
  readonly kind: 'link-conflict';
  readonly link: string;
  /** The value in force until this is resolved, then the others. */
  readonly by: readonly FactId[];
  /** The takes concerned, in line order. */
  readonly takes: readonly TakeId[];
}

interface Found {
  readonly link: string;
  by: readonly FactId[];
  readonly from: number;
  /** Where a fact that knew of all of them ended it; the end of the line while there is none. */
  until: number;
}

/**
 * Conflicts between phones along the line. A later fact that knew of both ends a conflict from there on
 * but leaves the takes before it in doubt, so it is reported as long as there are such takes.
 */
export function linkConflicts(day: Day): LinkConflict[] {
  if (!day.order) return [];
  const takes = day.takeOrder.map((id) => ({ id, place: day.takeItems.get(id)!.place }));
  return contradictions(day)
    .filter(({ link, by }) => !isResolved(day, link, by))
    .map(({ link, by, from, until }) => ({
      kind: 'link-conflict' as const,
      link,
      by,
      takes: takes.filter(({ place }) => place > from && place < until).map(({ id }) => id),
      isOpen: until === day.line.length,
    }))
    .filter(({ takes: touched, isOpen }) => isOpen || touched.length > 0)
    .map(({ isOpen: _, ...conflict }) => conflict);
}

function contradictions(day: Day): Found[] {
  const switched = switchedInputs(day.rig);
  const links = new Map<string, { link: Link; place: number }>();
  const open = new Map<string, Found>();
  const all: Found[] = [];
  for (const item of day.line) {
    for (const [name, value, said = item.fact] of writesOfItem(item, links.keys())) {
      const old = links.get(name);
      const link = linkOver(old?.link, value, said);
      links.set(name, { link, place: item.place });
      if (isOtherSocket(switched, name) || name.startsWith(HAD_PACK)) continue;
      const before = open.get(name);
      const by = link.rivals && [link.by, ...link.rivals.map((rival) => rival.by)];
      if (by && before) before.by = by;
      else if (by) {
        const one = { link: name, by, from: old!.place, until: day.line.length };
        open.set(name, one);
        all.push(one);
      } else if (before) {
        before.until = item.place;
        open.delete(name);
      }
    }
  }
  return all;
}

/** Resolved as having happened one after the other, so every fact stands. */
const isResolved = (day: Day, link: string, by: readonly FactId[]): boolean =>
  day.facts.some(
    (fact) =>
      fact.kind === 'conflict-resolved' &&
      fact.link === link &&
      fact.stands === null &&
      !day.takenBack.has(fact.id) &&
      by.every((id) => fact.among.includes(id)),
  );
