import { type Answers, answersFrom, answersNow } from '../../day/answers/answers.ts';
import { applyWrites } from '../../day/chain/links.ts';
import type { Day, Link, Links } from '../../day/model.ts';
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

  constructor(day: Day) {
    this.#day = day;
    this.before = answersNow(day);
    this.#links = new Map(this.before.links);
    this.#saying = { day: day.id, at: 0, zone: 0, nextId: idSource('planneddraft').next };
  }

  say(...drafts: readonly Draft[]): void {
    for (const fact of stampFacts(drafts, this.#saying)) applyWrites(this.#links, fact);
    this.drafts.push(...drafts);
  }

  get links(): Links {
    return this.#links;
  }

  answers(): Answers {
    return answersFrom(this.#day, this.#links);
  }
}
