import * as z from 'zod/mini';
import { idText, shortText } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

// The links of the chain from body to track. Each can change alone, and each change has its place on the
// line.

const list = <T extends z.ZodMiniType>(item: T) => z.array(item).check(z.minLength(1), z.maxLength(500));

/** A transmitter goes on a voice, or (null) on nobody. */
export const transmitterWorn = kind(
  'transmitter-worn',
  z.object({ transmitter: idText, voice: z.nullable(idText), mic: z.optional(shortText) }),
);

/** Receiver channels are tuned to transmitters, or (null) to none. */
export const channelsTuned = kind(
  'channels-tuned',
  z.object({
    tunings: list(z.object({ channel: idText, transmitter: z.nullable(idText) })),
  }),
);

export const SELECTOR_POSITIONS = ['a', 'b'] as const;
export type SelectorPosition = (typeof SELECTOR_POSITIONS)[number];
const position = openEnum(SELECTOR_POSITIONS);

/**
 * Leads run from a receiver's output, or from a hardline voice, to an input. If the input has a selector, the
 * lead arrives at one of its two positions. A null end hangs free. Plugging pushes out whichever lead was in
 * that socket, which is not named. Version 1 did name it, which goes wrong once either fact is moved.
 */
export const leadsPlugged = kind(
  'leads-plugged',
  z.object({
    leads: list(
      z.object({
        lead: idText,
        from: z.nullable(idText),
        to: z.nullable(idText),
        position: z.optional(position),
      }),
    ),
  }),
  2,
  { 1: withoutPushedOut },
);

/** Drops the lead that version 1 named as pushed out: no single action plugs one and unplugs another. */
function withoutPushedOut(old: Readonly<Record<string, unknown>>): Record<string, unknown> {
  if (!Array.isArray(old.leads)) return old;
  const plugged = old.leads.filter((lead: { to?: unknown } | null) => lead?.to !== null);
  return plugged.length > 0 ? { ...old, leads: plugged } : old;
}

/** One selector or a bank of them is thrown to a position. */
export const selectorsThrown = kind('selectors-thrown', z.object({ selectors: list(idText), position }));

/** Inputs feed these iso tracks, and no others. */
export const inputsSent = kind(
  'inputs-sent',
  z.object({
    routes: list(z.object({ input: idText, tracks: z.array(idText).check(z.maxLength(64)) })),
  }),
);

/** An input or a transmitter is muted or unmuted. This version ignores it for anything else. */
export const muteSet = kind(
  'mute-set',
  z.object({ what: z.enum(['input', 'transmitter']), part: idText, muted: z.boolean() }),
);

/**
 * These sources (receiver channels and hardline voices) share a track on purpose, in addition to any other
 * gang on it; an empty list ends every gang of the track.
 */
export const gangDeclared = kind(
  'gang-declared',
  z.object({ track: idText, sources: z.array(idText).check(z.maxLength(64)) }),
);

/** These sources no longer share a track on purpose; other gangs of the track stay. */
export const gangEnded = kind(
  'gang-ended',
  z.object({ track: idText, sources: z.array(idText).check(z.minLength(1), z.maxLength(64)) }),
);

/** A track gets a name typed by hand instead of the one from the chain; null removes it. */
export const trackNamed = kind('track-named', z.object({ track: idText, name: z.nullable(shortText) }));

export const NEEDS = ['needed', 'resting', 'done'] as const;
export type Need = (typeof NEEDS)[number];

/** Who is wanted from here on, who is not, and who has finished for the day. */
export const voicesNeeded = kind(
  'voices-needed',
  z.object({
    voices: list(z.object({ voice: idText, need: openEnum(NEEDS) })),
    /** The number of the scene that it follows from; said by hand if missing. */
    scene: z.optional(shortText),
  }),
);

/** The sound roll from here on (iXML TAPE), of the first recorder unless it names another. */
export const rollChanged = kind('roll-changed', z.object({ roll: shortText, recorder: z.optional(idText) }));
