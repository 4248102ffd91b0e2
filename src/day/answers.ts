import { Answering, type ChainAnswers } from './answering.ts';
import { changesIn } from './fold.ts';
import { linksAt } from './links.ts';
import type { Day, Links, TakeId } from './model.ts';
import type { Standing } from './reach.ts';

/** What the day says at one place on the line: for every voice, input and track, each with its because. */
export interface Answers extends ChainAnswers {
  /** Read from the line whenever it is asked for: kept for every take, the links would be most of what a day holds. */
  readonly links: Links;
}

/** The answers computed for a line, by how many changes come before, and where to go on from. */
interface Remembered {
  readonly answering: Answering;
  readonly known: Map<number, Answers>;
}

const remembered = new WeakMap<object, Remembered>();

/** What holds just before the item at `index` of the line, computed once for every chain. */
export function answersAt(day: Day, index: number): Answers {
  const place = Math.min(index, day.line.length);
  const { answersOf } = day.memory;
  let memory = remembered.get(answersOf);
  if (!memory) {
    memory = { answering: new Answering(day, linksAt(day, place), place), known: new Map() };
    remembered.set(answersOf, memory);
  }
  const changes = day.line[place]?.changesBefore ?? changesIn(day);
  const known = memory.known.get(changes);
  if (known) return known;
  memory.answering.moveTo(day, place);
  const answers: Answers = {
    ...memory.answering.answers(),
    get links() {
      return linksAt(day, place);
    },
  };
  memory.known.set(changes, answers);
  return answers;
}

/** What holds for a take. */
export const answersAtTake = (day: Day, take: TakeId): Answers =>
  answersAt(day, day.placeOf.get(take) ?? day.line.length);

/** What holds just before a take, or now where none is named: where a change that is about to be said will stand. */
export const answersBefore = (day: Day, take: TakeId | undefined): Answers =>
  take === undefined ? answersNow(day) : answersAtTake(day, take);

/** What holds now. */
export const answersNow = (day: Day): Answers => answersAt(day, day.line.length);

/** The answers for any set of links: also those of a plan that nobody has accepted yet. */
export const answersFrom = (standing: Standing, links: Links): Answers => ({
  ...new Answering(standing, links, 0).answers(),
  links,
});
