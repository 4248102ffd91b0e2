import { linksAt } from '../chain/links.ts';
import type { ChainEnds } from '../chain/reach.ts';
import { chainAt } from '../fold/fold.ts';
import type { Day, Links, TakeId } from '../model.ts';
import { placeOfTake } from '../takes.ts';
import { type ChainAnswers, chainAnswers } from './answering.ts';

/** The answers at one place on the line: for every voice, input and track, each with its reasons. */
export interface Answers extends ChainAnswers {
  /** Computed on demand: storing the links for every take would take up most of a day's memory. */
  readonly links: Links;
}

interface Known {
  readonly answers: Answers;
  /** Where they were last asked for: after a retraction the chain may no longer stand where it did. */
  at: { readonly day: Day; readonly place: number };
}

/** Computed answers of a line. */
interface Memory {
  readonly byChain: Map<number, Known>;
  /** Those computed last, with which the next ones share what did not change. */
  last: Answers | undefined;
}

const remembered = new WeakMap<object, Memory>();

/** The answers just before the item at `index`, computed once per chain. */
export function answersAt(day: Day, index: number): Answers {
  const place = Math.min(index, day.line.length);
  const { answersOf } = day.memory;
  const memory: Memory = remembered.get(answersOf) ?? { byChain: new Map(), last: undefined };
  remembered.set(answersOf, memory);
  const chain = chainAt(day, place);
  const known = memory.byChain.get(chain);
  if (known) {
    known.at = { day, place };
    return known.answers;
  }
  const made: Known = {
    answers: {
      ...chainAnswers(day, linksAt(day, place), memory.last),
      get links() {
        return linksAt(made.at.day, made.at.place);
      },
    },
    at: { day, place },
  };
  memory.byChain.set(chain, made);
  memory.last = made.answers;
  return made.answers;
}

export const answersAtTake = (day: Day, take: TakeId): Answers => answersAt(day, placeOfTake(day, take));

/** The answers just before a take, or now if none is given: where a new change will go. */
export const answersBefore = (day: Day, take: TakeId | undefined): Answers =>
  take === undefined ? answersNow(day) : answersAtTake(day, take);

export const answersNow = (day: Day): Answers => answersAt(day, day.line.length);

/** The answers for any set of links, such as those of a plan not accepted yet. */
export const answersFrom = (ends: ChainEnds, links: Links): Answers => ({
  ...chainAnswers(ends, links),
  links,
});
