import type { FactId } from '../shared/ids.ts';
import { leadsOf, mutedAt, sentTo, thrownTo, tunedTo, wornBy } from './links.ts';
import type { Lead, Link, Links, Part, PartId, Rig, SelectorPosition, Voice, VoiceId } from './model.ts';

/** Whatever can arrive at an input: a receiver channel, or a hardline voice. */
export interface Source {
  /** The receiver channel, or the hardline voice itself. */
  readonly id: string;
  readonly channel: PartId | null;
  readonly transmitter: PartId | null;
  /** Who is on it right now; null for a source that nobody is on. */
  readonly voice: VoiceId | null;
  readonly mutedAtBody: boolean;
  readonly because: readonly FactId[];
}

/** A lead's end at an input, and what comes through it. */
export interface Arrival {
  readonly lead: string;
  readonly from: string;
  readonly sources: readonly Source[];
  /** Kept for comms, playback or timecode: no voice comes this way. */
  readonly reserved: boolean;
  readonly because: FactId;
}

/** What reaches an input, and what a selector keeps from it. */
export interface Reach {
  readonly input: Part;
  readonly arrival: Arrival | null;
  /** At the other position of the selector before this input. */
  readonly away: Arrival | null;
  readonly selector: { readonly part: Part; readonly position: SelectorPosition } | null;
  readonly muted: boolean;
  readonly tracks: readonly PartId[];
  readonly because: readonly FactId[];
}

/** The known ends of the chain that a place on the line is computed against. */
export interface Standing {
  readonly rig: Rig;
  readonly voices: ReadonlyMap<VoiceId, Voice>;
}

/** For every input of the recorder, in reading order: what reaches it. */
export function reachOf(standing: Standing, links: Links): Reach[] {
  const leadsInto = new Map<PartId, { id: string; link: Link<Lead> }[]>();
  for (const lead of leadsOf(links)) {
    const { to, from } = lead.link.value;
    if (to && from) leadsInto.set(to, [...(leadsInto.get(to) ?? []), lead]);
  }
  const selectorOf = new Map(standing.rig.selectors.map((selector) => [selector.input, selector]));
  return standing.rig.inputs.map((input) => {
    const selector = selectorOf.get(input.id);
    return inputReach(standing, links, input, selector, leadsInto.get(input.id) ?? []);
  });
}

function inputReach(
  standing: Standing,
  links: Links,
  input: Part,
  selector: Part | undefined,
  leads: readonly { id: string; link: Link<Lead> }[],
): Reach {
  const thrown = selector && thrownTo(links, selector.id);
  const position = thrown?.value ?? 'a';
  const at = (wanted: SelectorPosition): Arrival | null => {
    const there = leads.filter(({ link }) => !selector || link.value.position === wanted);
    // Two leads cannot sit in one socket: the one plugged last has pushed the other out.
    const [last] = there.toSorted((a, b) => (a.link.by < b.link.by ? 1 : -1));
    return last ? arrivalOf(standing, links, last.id, last.link) : null;
  };
  const muted = mutedAt(links, input.id);
  const sent = sentTo(links, input.id);
  const arrival = at(position);
  return {
    input,
    arrival,
    away: selector ? at(position === 'a' ? 'b' : 'a') : null,
    selector: selector ? { part: selector, position } : null,
    muted: muted?.value ?? false,
    tracks: sent?.value ?? [],
    because: [thrown?.by, muted?.by, sent?.by, arrival?.because].filter((id) => id !== undefined),
  };
}

function arrivalOf(standing: Standing, links: Links, lead: string, link: Link<Lead>): Arrival | null {
  const from = link.value.from!;
  const voice = standing.voices.get(from);
  if (voice) {
    return { lead, from, sources: [hardline(voice, link.by)], reserved: false, because: link.by };
  }
  const output = standing.rig.byId.get(from);
  if (!output) return null;
  const reserved = Boolean(output.reserved);
  const channels = reserved ? [] : (output.carries ?? []).filter((id) => standing.rig.byId.has(id));
  const sources = channels.map((channel) => radioSource(standing, links, channel));
  return { lead, from, sources, reserved, because: link.by };
}

const hardline = (voice: Voice, by: FactId): Source => ({
  id: voice.id,
  channel: null,
  transmitter: null,
  voice: voice.id,
  mutedAtBody: false,
  because: [by],
});

/** What a receiver channel brings: the voice that wears the transmitter it is tuned to, if anybody does. */
export function radioSource({ rig, voices }: Standing, links: Links, channel: PartId): Source {
  const tuned = tunedTo(links, channel);
  const transmitter = tuned?.value && rig.byId.has(tuned.value) ? tuned.value : null;
  const worn = transmitter ? wornBy(links, transmitter) : undefined;
  const voice = worn?.value ? voices.get(worn.value) : undefined;
  const muted = transmitter ? mutedAt(links, transmitter) : undefined;
  return {
    id: channel,
    channel,
    transmitter,
    // Struck off the cast or not: whoever was on a take stays on it.
    voice: voice?.id ?? null,
    mutedAtBody: muted?.value ?? false,
    because: [worn?.by, tuned?.by, muted?.by].filter((id) => id !== undefined),
  };
}

export const isMuted = (reach: Reach, source: Source): boolean => reach.muted || source.mutedAtBody;

/** The sources at an input that somebody is on. */
export const liveSources = (reach: Reach): Source[] =>
  (reach.arrival?.sources ?? []).filter(({ voice }) => voice !== null);
