import type { Journal } from '../app/ports.ts';
import type { CopyBeside } from './copy-beside.ts';

/**
 * The journal, writing every action to a second copy as well. An action is saved once the database has it and
 * the copy was tried; without a copy, the database alone counts.
 */
export const withCopy = (journal: Journal, copies: () => Promise<CopyBeside>): Journal => ({
  ...journal,
  async append(facts, outline, held) {
    const copied = copies()
      .then((beside) => beside.keep(facts, new Set(outline.unsure)))
      .catch(() => false);
    const back = await journal.append(facts, outline, held);
    await copied;
    return back;
  },
  // The copy first, or it would restore what is repaired here.
  async mend(facts, outline) {
    const beside = await copies();
    await beside.forget(outline.id);
    await journal.mend(facts, outline);
    await beside.keep(facts, new Set(outline.unsure));
  },
  // The copy first: a fact found only in the copy counts as lost by the database, and would be restored.
  async erase(day) {
    const beside = await copies();
    await beside.forget(day);
    await journal.erase(day);
    // Another window may have written in between.
    await beside.forget(day);
  },
});
