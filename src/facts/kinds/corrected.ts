import * as z from 'zod/mini';
import { factIdText, text } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

/** How many one retraction may name; an action of more is taken back by several. */
export const MOST_TARGETS = 2000;

export const CORRECTIONS = ['hand', 'undo', 'redo'] as const;

/** Facts are taken back. A retraction is a fact, so it can be taken back itself. */
export const factRetracted = kind(
  'fact-retracted',
  z.object({
    targets: z.array(factIdText).check(z.minLength(1), z.maxLength(MOST_TARGETS)),
    /** Undo and redo walk the actions of this phone; a retraction by hand is an action like any other. */
    by: openEnum(CORRECTIONS),
  }),
);

/** A change or a take belongs just before this take, or (null) where it was said. */
export const factMoved = kind('fact-moved', z.object({ target: factIdText, to: z.nullable(factIdText) }));

/**
 * What phones that did not know of each other said of one link is decided: what `stands` says holds from where the first
 * of them stands on the line, and the others say nothing of this link any more. Null: all of it happened, in this order.
 */
export const conflictResolved = kind(
  'conflict-resolved',
  z.object({
    link: text(200),
    among: z.array(factIdText).check(z.minLength(2), z.maxLength(64)),
    stands: z.nullable(factIdText),
  }),
);

/** Two phones logged one take: what was said of `take` is said of `into`, and `take` is no take of its own. */
export const takesJoined = kind('takes-joined', z.object({ take: factIdText, into: factIdText }));
