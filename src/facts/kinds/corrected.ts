import * as z from 'zod/mini';
import { factIdText, text } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

/** The most facts one retraction may name; larger actions need several. */
export const MOST_TARGETS = 2000;

export const CORRECTIONS = ['hand', 'undo', 'redo'] as const;

/** Facts are retracted. A retraction is a fact, so it can be retracted too. */
export const factRetracted = kind(
  'fact-retracted',
  z.object({
    targets: z.array(factIdText).check(z.minLength(1), z.maxLength(MOST_TARGETS)),
    /** Undo and redo walk this phone's actions; a retraction by hand is an action like any other. */
    by: openEnum(CORRECTIONS),
  }),
);

/** A change or a take belongs just before this take, or (null) where it was first recorded. */
export const factMoved = kind('fact-moved', z.object({ target: factIdText, to: z.nullable(factIdText) }));

/**
 * Resolves different entries for one link by phones that did not know of each other: the value of `stands`
 * holds from the first of them on the line, and the others no longer affect this link. Null: all of it
 * happened, in this order.
 */
export const conflictResolved = kind(
  'conflict-resolved',
  z.object({
    link: text(200),
    among: z.array(factIdText).check(z.minLength(2), z.maxLength(64)),
    stands: z.nullable(factIdText),
  }),
);

/** Two phones logged the same take: what was entered for `take` counts for `into`, and `take` disappears. */
export const takesJoined = kind('takes-joined', z.object({ take: factIdText, into: factIdText }));
