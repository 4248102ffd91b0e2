import type { InDoubt } from '../../app/in-doubt.ts';
import { countOf } from './chain.ts';
import { conflictWords } from './conflicts.ts';

/** What would carry over to another day without being certain, a sentence each. */
export function inDoubtWords({ day, damaged, newer, unsaved, differing }: InDoubt): string[] {
  const entries = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);
  return [
    ...(damaged > 0 ? [`${entries(damaged)} of this day cannot be read. What it says is missing.`] : []),
    ...(newer > 0
      ? [`${entries(newer)} of this day came from a newer version of the app. What it says is missing.`]
      : []),
    ...(unsaved > 0
      ? [
          `${countOf(unsaved, 'action')} of this day ${unsaved === 1 ? 'was' : 'were'} not saved when the app was closed, and ${unsaved === 1 ? 'is' : 'are'} not restored. What it says is missing.`,
        ]
      : []),
    ...differing.map((conflict) => `${conflictWords(day, conflict)}. The first carries over.`),
  ];
}

/** `'2 things are in doubt'`. */
export const inDoubtTitle = (doubt: InDoubt): string => {
  const { length } = inDoubtWords(doubt);
  return length === 1 ? 'One thing is in doubt' : `${countOf(length, 'thing')} are in doubt`;
};
