import { Answering, type ChainAnswers } from './answering.ts';
import { chainAt } from './fold.ts';
import { linksAt } from './links.ts';
import type { Day, Links, TakeId } from './model.ts';
import type { Standing } from './reach.ts';
import { placeOfTake } from './takes.ts';

/** What the day says at one place on the line: for every voice, input and track, each with its because. */
export interface Answers extends ChainAnswers {
  /** Read from the line whenever it is asked for: kept for every take, the links would be most of what a day holds. */
  readonly links: Links;
}

/** The answers computed for a line, by the number of the chain, and where to go on from. */
interface Remembered {
  readonly answering: Answering;
  readonly known: Map<number, Known>;
}

interface Known {
  readonly answers: Answers;
  /** Where they were asked for last: a chain may stand no more where it stood once, when something was taken back. */
  at: { readonly day: Day; readonly place: number };
}

const remembered = new WeakMap<object, Remembered>();

/** What holds just before the item at `index` of the line, computed once for every chain. */
export function answersAt(day: Day, index: number): Answers {
  const place = Math.min(index, day.line.length);
  const { answersOf } = day.memory;
  let memory = remembered.get(answersOf);
  if (!memory) {
    memory = {
      answering: new Answering(day, linksAt(day, place), place, chainAt(day, place)),
      known: new Map(),
    };
    remembered.set(answersOf, memory);
  }
  const chain = chainAt(day, place);
  const known = memory.known.get(chain);
  if (known) {
    known.at = { day, place };
    return known.answers;
  }
  memory.answering.moveTo(day, place);
  const made: Known = {
    answers: {
      ...memory.answering.answers(),
      get links() {
        return linksAt(made.at.day, made.at.place);
      },
    },
    at: { day, place },
  };
  memory.known.set(chain, made);
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
export const answersFrom = (standing: Standing, links: Links): Answers => ({
  ...new Answering(standing, links, 0, 0).answers(),
  links,
});
