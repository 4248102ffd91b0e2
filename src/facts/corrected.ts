import * as z from 'zod/mini';
import { factIdText } from './envelope.ts';
import { kind } from './kind.ts';

/** Facts are taken back. A retraction is a fact, so it can be taken back itself. */
export const factRetracted = kind('fact-retracted', () =>
  z.object({
    targets: z.array(factIdText).check(z.minLength(1), z.maxLength(2000)),
    /** Undo and redo walk the actions of this phone; a retraction by hand is an action like any other. */
    by: z.enum(['hand', 'undo', 'redo']),
  }),
);

/** A change or a take belongs just before this take, or (null) where it was said. */
export const factMoved = kind('fact-moved', () =>
  z.object({ target: factIdText, to: z.nullable(factIdText) }),
);
