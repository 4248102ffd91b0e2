import type { UnsavedDay } from '../../../app/unsaved.ts';
import { countOf } from '../../words/chain.ts';

/** How much was unsaved when the app closed, and where it is now. */
export function unsavedWords({
  actions,
  unreadable,
  isNew,
}: Pick<UnsavedDay, 'actions' | 'unreadable' | 'isNew'>): string {
  const count = actions.length + unreadable;
  const [they, were] = count === 1 ? ['It is', 'was'] : ['They are', 'were'];
  const where = isNew ? 'Nothing else of the day is on this phone.' : `${they} not on the day yet.`;
  return `${countOf(count, 'action')} ${were} not saved when the app was closed. ${where}`;
}

/** For actions that this version cannot read. */
export const unreadableWords = (count: number): string =>
  `${count === 1 ? 'One of them' : `${count} of them`} cannot be read here: nothing is done with ${
    count === 1 ? 'it' : 'them'
  } unless you discard.`;
