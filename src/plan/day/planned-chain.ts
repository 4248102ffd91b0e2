import { type Answers, answersBefore, answersFrom } from '../../day/answers/answers.ts';
import { applyWrites } from '../../day/chain/links.ts';
import type { Day, Link, Links, Rig, TakeId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import { stampFacts } from '../../facts/stamp.ts';
import { idSource } from '../../shared/ids.ts';

/** The chain of a day as it would be after drafts that are not recorded yet. */
export class PlannedChain {
  readonly drafts: Draft[] = [];
  /** The day's answers without them. */
  readonly before: Answers;
  readonly #day: Day;
  readonly #links: Map<string, Link>;
  readonly #saying;

  /** As it is now, or was just before a take. */
  constructor(day: Day, before?: TakeId) {
    this.#day = day;
    this.before = answersBefore(day, before);
    this.#links = new Map(this.before.links);
    this.#saying = { day: day.id, at: 0, zone: 0, nextId: idSource('planneddraft').next };
  }

  say(...drafts: readonly Draft[]): void {
    for (const fact of stampFacts(drafts, this.#saying)) applyWrites(this.#links, fact);
    this.drafts.push(...drafts);
  }

  get rig(): Rig {
    return this.#day.rig;
  }

  get links(): Links {
    return this.#links;
  }

  answers(): Answers {
    return answersFrom(this.#day, this.#links);
  }
}
