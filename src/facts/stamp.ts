import type { FactId } from '../shared/ids.ts';
import { type Draft, type Fact, versionOf } from './fact.ts';
import type { DayId } from './kinds/envelope.ts';

/** When and where an action happened. `seen` holds the highest counter known of every other database. */
export interface Saying {
  readonly day: DayId;
  /** UTC ms. */
  readonly at: number;
  /** Minutes east of UTC. */
  readonly zone: number;
  readonly seen?: Readonly<Record<string, number>>;
  /** How far the clock was set ahead since this window's last action. */
  readonly ahead?: number;
  readonly nextId: () => FactId;
  /** The action that this one continues. */
  readonly batch?: FactId | undefined;
}

/** Turns the drafts of one action into facts: one batch, in order, each with its id. */
export function stampFacts(drafts: readonly Draft[], saying: Saying): Fact[] {
  const { day, at, zone, seen, ahead, nextId } = saying;
  let { batch } = saying;
  return drafts.map((draft) => {
    const id = nextId();
    const { before, ...body } = draft;
    const fact = {
      id,
      day,
      v: versionOf(draft.kind),
      at,
      zone,
      ...(batch ? { batch } : ahead && { ahead }),
      ...(before && { before }),
      ...(seen && Object.keys(seen).length > 0 && { seen }),
      ...body,
    } as Fact;
    batch ??= id;
    return fact;
  });
}
