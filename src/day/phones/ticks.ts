import type { Draft } from '../../facts/fact.ts';
import { writesOf } from '../chain/links.ts';
import type { Day, Fact, FactId } from '../model.ts';

/** A move of a checklist as a tick names it: the link that it will write, and what to. */
export interface Tickable {
  readonly link: string;
  readonly to: string;
}

/** What a link leads to can be a long list; its beginning tells moves apart. */
const LONGEST_TO = 400;

/** How a tick names a move of the chain. */
export function tickable(move: Draft): Tickable {
  const [link = '', value] = writesOf(move as Fact)[0] ?? [];
  return { link, to: JSON.stringify(value ?? null).slice(0, LONGEST_TO) };
}

/**
 * Who last ticked a move that is still to be applied: the tick's own fact. Once its link is written, by whomever, a
 * tick is spent: the same move later in the day is another one.
 */
export function ticksOf(day: Day): (move: Tickable) => FactId | undefined {
  const last = new Map<string, FactId>();
  for (const fact of inSaidOrder(day)) {
    if (fact.ticked) last.set(nameOf(fact), fact.id);
    else last.delete(nameOf(fact));
  }
  return (move) => {
    const tick = last.get(nameOf(move));
    const writer = day.tail.get(move.link)?.by;
    return tick !== undefined && writer !== undefined && isLater(day, writer, tick) ? undefined : tick;
  };
}

const nameOf = ({ link, to }: Tickable): string => `${link} ${to}`;

type Ticked = Extract<Fact, { kind: 'move-ticked' }>;

const inSaidOrder = (day: Day): Ticked[] =>
  day.facts
    .filter((fact): fact is Ticked => fact.kind === 'move-ticked' && !day.takenBack.has(fact.id))
    .sort((one, other) => (isLater(day, one.id, other.id) ? 1 : -1));

/** Between phones, ids only show who had more facts; of two at the same time they decide. */
function isLater({ order }: Day, one: FactId, other: FactId): boolean {
  const apart = order ? order.timeOf(one) - order.timeOf(other) : 0;
  return apart === 0 ? one > other : apart > 0;
}
