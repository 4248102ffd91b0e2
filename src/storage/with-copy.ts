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
      .then((beside) => beside.keep(facts))
      .catch(() => false);
    const back = await journal.append(facts, outline, held);
    await copied;
    return back;
  },
  async erase(day) {
    await journal.erase(day);
    await (await copies()).forget(day);
  },
});
