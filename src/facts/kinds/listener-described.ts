import * as z from 'zod/mini';
import { idText, momentMs, shortText } from './envelope.ts';
import { kind } from './kind.ts';

const fields = z.object({
  /** Who listens: a job, or a name. */
  name: z.optional(shortText),
  /** What is written on it: `IFB 1`. */
  receiver: z.optional(shortText),
  /** The send or track of the rig that is heard; null if `hears` says it in words. */
  part: z.optional(z.nullable(idText)),
  hears: z.optional(shortText),
  /** The channel or frequency it is set to, as it reads. */
  channel: z.optional(shortText),
  /** When fresh cells went in, as earlier versions said it; now it is said like that of any device. */
  cellsAtMs: z.optional(z.nullable(momentMs)),
  /** The receiver is with them; false once it came back. */
  handedOut: z.optional(z.boolean()),
  struck: z.optional(z.boolean()),
});
export type ListenerFields = z.infer<typeof fields>;

/** Somebody who hears the sound as it is made, and by which receiver. Merged field by field. */
export const listenerDescribed = kind('listener-described', z.object({ listener: idText, fields }));
