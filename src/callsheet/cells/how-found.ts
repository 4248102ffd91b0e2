/** How a cell was found: by the heading of its column, by its shape alone, or by a guess to be checked. */
export type How = 'heading' | 'shape' | 'guessed';

/** The weaker of two: what was put together is only as sure as its weakest piece. */
export const weaker = (a: How, b: How): How =>
  a === 'guessed' || b === 'guessed' ? 'guessed' : a === 'shape' || b === 'shape' ? 'shape' : 'heading';
