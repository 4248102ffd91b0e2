import * as z from 'zod/mini';
import { idText, text } from './envelope.ts';
import { kind } from './kind.ts';

/** What is said of the mic on a body: its model and colour, where it is mounted, its cable, what it rubs on. */
export const MIC_FIELDS = ['place', 'colour', 'model', 'cable', 'rubs'] as const;
export type MicField = (typeof MIC_FIELDS)[number];

/** The longest of each text of a mic. */
export const MIC_TEXT_LONGEST = 100;

const said = z.optional(z.nullable(text(MIC_TEXT_LONGEST)));
const mic = z.object({ model: said, colour: said, place: said, cable: said, rubs: said });
export type MicSaid = z.infer<typeof mic>;

/**
 * What is true of the mic of a voice from here on: the one on this transmitter, or (null) on its own lead. Null takes
 * a field back. Carried over from the day before, it holds until somebody says otherwise, and is shown as such.
 */
export const micMounted = kind(
  'mic-mounted',
  z.object({
    voice: idText,
    transmitter: z.nullable(idText),
    mic,
    carried: z.optional(z.boolean()),
  }),
);
