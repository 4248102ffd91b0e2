import * as z from 'zod/mini';
import { idText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

// Input for the planner besides the chain: pins, parts out of order, and the cost of moves.

const pins = z.object({
  transmitter: z.optional(idText),
  channel: z.optional(idText),
  input: z.optional(idText),
  track: z.optional(idText),
  /** Never in a gang. */
  alone: z.optional(z.boolean()),
});
export type Pins = z.infer<typeof pins>;

/** What a voice keeps whatever is planned, on one recorder or the main one; null unpins everything there. */
export const voicePinned = kind(
  'voice-pinned',
  z.object({ voice: idText, pins: z.nullable(pins), recorder: z.optional(idText) }),
);

/** A transmitter, channel, lead, input or track is out of order from here on, or working again. */
export const outMarked = kind('out-marked', z.object({ part: idText, out: z.boolean() }));

const weight = z.optional(wholeNumber(1, 99));
const weights = z.object({
  fit: weight,
  move: weight,
  borrow: weight,
  retune: weight,
  throwSelector: weight,
  replug: weight,
  route: weight,
});
export type MoveWeights = z.infer<typeof weights>;

/** What each kind of move costs on this rig. */
export const movesWeighed = kind('moves-weighed', z.object({ weights: weights }));

/** A move of a plan was ticked as done, or not, before the plan is applied; named by the link it writes, and what to. */
export const moveTicked = kind(
  'move-ticked',
  z.object({ link: text(200), to: text(400), ticked: z.boolean() }),
);
