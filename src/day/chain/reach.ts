import { SELECTOR_POSITIONS } from '../../facts/kinds/chain-changed.ts';
import type { FactId } from '../../shared/ids.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { Open, Part, PartId, Rig, SelectorPosition, Voice, VoiceId } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import type { Chain } from './chain.ts';
import type { PluggedLead } from './leads.ts';
import { mutedAt, sentTo, thrownTo, tunedTo, wornBy } from './links.ts';

/** What can arrive at an input: a receiver channel, or a hardline voice. */
export interface Source {
  /** The receiver channel, or the hardline voice itself. */
  readonly id: string;
  readonly channel: PartId | null;
  readonly transmitter: PartId | null;
  /** Who is on it now; null if nobody is. */
  readonly voice: VoiceId | null;
  readonly mutedAtBody: boolean;
  readonly because: readonly FactId[];
}

/** The end of a lead at an input, and what comes through it. */
export interface Arrival {
  readonly lead: string;
  readonly from: string;
  readonly sources: readonly Source[];
  /** Reserved for comms, playback or timecode: no voice comes this way. */
  readonly reserved: boolean;
  readonly because: FactId;
}

/** What reaches an input, and what its selector keeps out. */
export interface Reach {
  readonly input: Part;
  readonly arrival: Arrival | null;
  /** At the other position of this input's selector. */
  readonly away: Arrival | null;
  readonly selector: { readonly part: Part; readonly position: Open<SelectorPosition> } | null;
  readonly muted: boolean;
  readonly tracks: readonly PartId[];
  readonly because: readonly FactId[];
}

/** The rig and the cast that the chain is computed against. */
export interface ChainEnds {
  readonly rig: Rig;
  readonly voices: ReadonlyMap<VoiceId, Voice>;
}

/** What a receiver channel brings, wherever its output goes. */
type Sources = (channel: PartId) => Source;

/** What reaches each input of the rig, in its order. A source that goes to several recorders is one and the same. */
export function reachOfInputs(ends: ChainEnds, chain: Chain): Reach[] {
  const known = new Map<PartId, Source>();
  const sourceOf = (channel: PartId): Source => {
    const source = known.get(channel) ?? radioSource(ends, chain, channel);
    known.set(channel, source);
    return source;
  };
  return ends.rig.inputs.map((input) => inputReach(ends, chain, sourceOf, input));
}

/** What reaches an input, by way of its selector if it has one. */
function inputReach(ends: ChainEnds, chain: Chain, sourceOf: Sources, input: Part): Reach {
  const selector = ends.rig.selectors.findLast((one) => one.input === input.id);
  const thrown = selector && thrownTo(chain, selector.id);
  const position = thrown?.value ?? 'a';
  const at = (wanted: SelectorPosition): Arrival | null => {
    const lead = chain.leadIn({ input: input.id, position: wanted });
    return lead?.link.value.from ? arrivalOf(ends, sourceOf, lead) : null;
  };
  const muted = mutedAt(chain, input.id);
  const sent = sentTo(chain, input.id);
  // If only a newer version knows the position, nothing is assumed to arrive.
  const isRead = isOneOf(SELECTOR_POSITIONS, position);
  const arrival = isRead ? at(position) : null;
  return {
    input,
    arrival,
    away: selector && isRead ? at(position === 'a' ? 'b' : 'a') : null,
    selector: selector ? { part: selector, position } : null,
    muted: muted?.value ?? false,
    tracks: tracksFed(ends.rig, input, sent?.value ?? NOWHERE),
    because: [thrown?.by, muted?.by, sent?.by, arrival?.because].filter((id) => id !== undefined),
  };
}

const NOWHERE: readonly PartId[] = [];

/** An input feeds tracks of its own recorder only, whatever it was sent to before it became that one's. */
function tracksFed({ byId, recorders }: Rig, input: Part, sent: readonly PartId[]): readonly PartId[] {
  if (recorders.length === 0) return sent;
  const isElsewhere = (track: Part | undefined): boolean =>
    track !== undefined && recorderOfPart(track) !== recorderOfPart(input);
  return sent.some((id) => isElsewhere(byId.get(id)))
    ? sent.filter((id) => !isElsewhere(byId.get(id)))
    : sent;
}

function arrivalOf(ends: ChainEnds, sourceOf: Sources, { id: lead, link }: PluggedLead): Arrival | null {
  const from = link.value.from!;
  const voice = ends.voices.get(from);
  if (voice) {
    return { lead, from, sources: [hardline(voice, link.by)], reserved: false, because: link.by };
  }
  const output = ends.rig.byId.get(from);
  if (!output) return null;
  const reserved = Boolean(output.reserved);
  const channels = reserved ? [] : (output.carries ?? []).filter((id) => ends.rig.byId.has(id));
  return { lead, from, sources: channels.map(sourceOf), reserved, because: link.by };
}

const hardline = (voice: Voice, by: FactId): Source => ({
  id: voice.id,
  channel: null,
  transmitter: null,
  voice: voice.id,
  mutedAtBody: false,
  because: [by],
});

/** What a receiver channel brings: the wearer of the transmitter it is tuned to, if any. */
function radioSource({ rig, voices }: ChainEnds, chain: Chain, channel: PartId): Source {
  const tuned = tunedTo(chain, channel);
  const transmitter = tuned?.value && rig.byId.has(tuned.value) ? tuned.value : null;
  const worn = transmitter ? wornBy(chain, transmitter) : undefined;
  const voice = worn?.value ? voices.get(worn.value) : undefined;
  const muted = transmitter ? mutedAt(chain, transmitter) : undefined;
  return {
    id: channel,
    channel,
    transmitter,
    // Removed from the cast or not: whoever was on a take stays on it.
    voice: voice?.id ?? null,
    mutedAtBody: muted?.value ?? false,
    because: [worn?.by, tuned?.by, muted?.by].filter((id) => id !== undefined),
  };
}

export const isMuted = (reach: Reach, source: Source): boolean => reach.muted || source.mutedAtBody;

/** The sources at an input that somebody is on. */
export const liveSources = (reach: Reach): Source[] =>
  (reach.arrival?.sources ?? []).filter(({ voice }) => voice !== null);
