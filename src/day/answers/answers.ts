import { linksAt } from '../chain/links.ts';
import type { ChainEnds } from '../chain/reach.ts';
import { chainAt } from '../fold/fold.ts';
import type { Day, Links, TakeId } from '../model.ts';
import { placeOfTake } from '../takes.ts';
import { type ChainAnswers, chainAnswers } from './answering.ts';

/** What the day says at one place on the line: for every voice, input and track, each with its because. */
export interface Answers extends ChainAnswers {
  /** Read from the line whenever it is asked for: kept for every take, the links would be most of what a day holds. */
  readonly links: Links;
}

interface Known {
  readonly answers: Answers;
  /** Where they were asked for last: a chain may stand no more where it stood once, when something was taken back. */
  at: { readonly day: Day; readonly place: number };
}

/** The answers computed for a line, by the number of the chain. */
const remembered = new WeakMap<object, Map<number, Known>>();

/** What holds just before the item at `index` of the line, computed once for every chain. */
export function answersAt(day: Day, index: number): Answers {
  const place = Math.min(index, day.line.length);
  const { answersOf } = day.memory;
  const memory = remembered.get(answersOf) ?? new Map<number, Known>();
  remembered.set(answersOf, memory);
  const chain = chainAt(day, place);
  const known = memory.get(chain);
  if (known) {
    known.at = { day, place };
    return known.answers;
  }
  const made: Known = {
    answers: {
      ...chainAnswers(day, linksAt(day, place)),
      get links() {
        return linksAt(made.at.day, made.at.place);
      },
    },
    at: { day, place },
  };
  memory.set(chain, made);
  return made.answers;
}

/** What holds for a take. */
export const answersAtTake = (day: Day, take: TakeId): Answers => answersAt(day, placeOfTake(day, take));

/** What holds just before a take, or now where none is named: where a change that is about to be said will stand. */
export const answersBefore = (day: Day, take: TakeId | undefined): Answers =>
  take === undefined ? answersNow(day) : answersAtTake(day, take);

/** What holds now. */
export const answersNow = (day: Day): Answers => answersAt(day, day.line.length);

/** The answers for any set of links: also those of a plan that nobody has accepted yet. */
export const answersFrom = (ends: ChainEnds, links: Links): Answers => ({
  ...chainAnswers(ends, links),
  links,
});
