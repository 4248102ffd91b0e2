/**
 * How a cell was found: by the heading of its column, by its shape alone, by a guess to be checked, or not on the sheet
 * but on an earlier day.
 */
export type How = 'heading' | 'shape' | 'guessed' | 'carried';

/** The weaker of two: what was put together is only as sure as its weakest piece. */
export const weaker = (a: How, b: How): How =>
  a === 'guessed' || b === 'guessed' ? 'guessed' : a === 'shape' || b === 'shape' ? 'shape' : 'heading';
