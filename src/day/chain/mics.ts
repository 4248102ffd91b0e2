import { MIC_FIELDS, type MicField } from '../../facts/kinds/mic-mounted.ts';
import type { Link, Links, PartId, VoiceId } from '../model.ts';
import { key, type LinkReader } from './links.ts';

/** The mic of a voice on one of its packs, or on its own lead; what was not said is empty. */
export interface Mic extends Readonly<Record<MicField, string>> {
  /** As on the day before, and not confirmed today. */
  readonly carried: boolean;
}

const read = (links: LinkReader, name: string): Link | undefined => links.get(name);

/** The mic at one place on the line; undefined if nothing is said of it. */
export function micOn(links: LinkReader, voice: VoiceId, transmitter: PartId | null): Mic | undefined {
  const said = MIC_FIELDS.map((field) => {
    const value = read(links, key.mic(field, voice, transmitter))?.value;
    return [field, typeof value === 'string' ? value : ''] as const;
  });
  if (said.every(([, text]) => text === '')) return undefined;
  return {
    ...(Object.fromEntries(said) as Record<MicField, string>),
    carried: read(links, key.mic('carried', voice, transmitter))?.value === true,
  };
}

/** By what two mics on one body are told apart, best first. */
const TOLD_BY = ['place', 'colour', 'model'] as const;

/**
 * What tells the mic on a pack from the others on the same body: where it is, else its colour, else its model. Empty
 * for the only one, and where nothing said of it differs.
 */
export function micToldApart(
  links: LinkReader,
  voice: VoiceId,
  packs: readonly PartId[],
  transmitter: PartId | null,
): string {
  if (transmitter === null || packs.length < 2) return '';
  const own = micOn(links, voice, transmitter);
  const others = packs.filter((pack) => pack !== transmitter).map((pack) => micOn(links, voice, pack));
  const by = TOLD_BY.find(
    (field) =>
      own?.[field] && others.every((other) => other?.[field].toLowerCase() !== own[field].toLowerCase()),
  );
  return by && own ? own[by] : '';
}

/** Every mic known of a voice, by its pack (null for its own lead), in the order they were first said. */
export function micsKnownOf(links: Links, voice: VoiceId): ReadonlyMap<PartId | null, Mic> {
  const known = new Map<PartId | null, Mic>();
  for (const name of links.keys()) {
    const pack = packOfMicLink(name, voice);
    const mic = pack === undefined || known.has(pack) ? undefined : micOn(links, voice, pack);
    if (mic && pack !== undefined) known.set(pack, mic);
  }
  return known;
}

/** The pack in the name of a link of a voice's mic; undefined for any other link. */
function packOfMicLink(name: string, voice: VoiceId): PartId | null | undefined {
  const field = MIC_FIELDS.find((one) => name.startsWith(key.mic(one, voice, null)));
  return field && (name.slice(key.mic(field, voice, null).length) || null);
}

/** Its colour and model, its place, its cable, as they are listed. */
export const micListed = ({ model, colour, place, cable }: Omit<Mic, 'carried'>): string[] =>
  [[colour, model].filter(Boolean).join(' '), place, cable].filter(Boolean);
