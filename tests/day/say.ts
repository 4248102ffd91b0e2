import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';

/** 7 October 2026, 07:00 UTC. */
export const MORNING = Date.UTC(2026, 9, 7, 7);

export interface Speaker {
  readonly facts: Fact[];
  /** Says one action's worth of facts and returns them. */
  say(...drafts: Draft[]): Fact[];
  /** Says one fact and returns its id. */
  id(draft: Draft): string;
  day(): Day;
}

/** A phone that says facts a minute apart. `writer` is six characters for the phone. */
export function speaker(writer = 'phonea', start = MORNING): Speaker {
  const facts: Fact[] = [];
  const ids = idSource(`${writer}00000`);
  let at = start;
  const say = (...drafts: Draft[]): Fact[] => {
    at += 60_000;
    const said = stampFacts(drafts, { day: 'day-1', at, zone: 120, nextId: ids.next });
    facts.push(...said);
    return said;
  };
  return {
    facts,
    say,
    id: (draft) => say(draft)[0]!.id,
    day: () => foldDay('day-1', facts),
  };
}

/** A take of ten seconds of a lettered slate. */
export const take = (scene: string, setup: number, number: number, more: object = {}): Draft =>
  ({
    kind: 'take-logged',
    fields: {
      kind: 'take',
      slate: { style: 'lettered', scene, setup },
      number,
      start: { frames: 90_000, rate: '25' },
      length: { frames: 250, rate: '25' },
      ...more,
    },
  }) as Draft;
