import type { Journal } from '../app/ports.ts';
import type { CopyBeside } from './copy-beside.ts';

/**
 * The journal with a second copy of every action written meanwhile. An action is saved when the database has it and the
 * copy was tried; where the copy cannot be had, the database alone counts.
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
  // The copy first: it would put back what is mended here.
  async mend(facts, outline) {
    const beside = await copies();
    await beside.forget(outline.id);
    await journal.mend(facts, outline);
    await beside.keep(facts, new Set(outline.unsure));
  },
  // The copy first: what is in the copy alone counts as killed on its way to the database, and comes back.
  async erase(day) {
    const beside = await copies();
    await beside.forget(day);
    await journal.erase(day);
    // Another window may have said something in between.
    await beside.forget(day);
  },
});
