import type { FactId } from '../../shared/ids.ts';
import type { Lead, Link, Links, Part, PartId, Rig, VoiceId } from '../model.ts';
import { type Gang, gangsOn } from './gang-links.ts';
import {
  type PluggedLead,
  pluggedLead,
  type Socket,
  type SwitchedInputs,
  socketKey,
  switchedInputs,
} from './leads.ts';
import { LEAD, tunedTo, wornBy } from './links.ts';

/** A part of the rig, and the fact that links it. */
export interface SaidOf {
  readonly part: PartId;
  readonly by: FactId;
}

/** The chain at one place on the line, searchable from the body and from the recorder. */
export class Chain {
  readonly #links: Links;
  readonly #switched: SwitchedInputs;
  readonly #leads = new Map<string, Link<Lead>>();
  /** By the output or the hardline voice that they come from. */
  readonly #leadsFrom = new Map<string, PluggedLead[]>();
  readonly #packs: ReadonlyMap<string, SaidOf[]>;
  readonly #channels: ReadonlyMap<string, SaidOf[]>;

  constructor(rig: Rig, links: Links) {
    this.#links = links;
    this.#switched = switchedInputs(rig);
    for (const [name, link] of links)
      if (name.startsWith(LEAD)) this.#note(name.slice(LEAD.length), link as Link<Lead>);
    this.#packs = byEnd(rig.transmitters, (id) => wornBy(links, id));
    this.#channels = byEnd(rig.channels, (id) => tunedTo(links, id));
  }

  #note(id: string, link: Link<Lead>): void {
    this.#leads.set(id, link);
    const { from } = link.value;
    if (from !== null) addTo(this.#leadsFrom, from, pluggedLead(this.#links, this.#switched, id, link));
  }

  get(name: string): Link | undefined {
    return this.#links.get(name);
  }

  /** The lead in a socket, if there is one. */
  leadIn(socket: Socket): PluggedLead | undefined {
    const id = this.#links.get(socketKey(this.#switched, socket))?.value as string | undefined;
    const link = id === undefined ? undefined : this.#leads.get(id);
    // The lead last plugged there may have moved since, leaving the socket empty.
    if (id === undefined || link?.value.to !== socket.input) return undefined;
    if (this.#switched.has(socket.input) && link.value.position !== socket.position) return undefined;
    return { id, link, pushedOutOf: null };
  }

  /** The leads from an output or a hardline voice, and where they go. */
  leadsFrom(end: PartId | VoiceId): readonly PluggedLead[] {
    return this.#leadsFrom.get(end) ?? [];
  }

  /** The transmitters a voice wears, in rig order. */
  packsOn(voice: VoiceId): readonly SaidOf[] {
    return this.#packs.get(voice) ?? [];
  }

  /** The receiver channels tuned to a transmitter, in rig order. */
  channelsOf(transmitter: PartId): readonly SaidOf[] {
    return this.#channels.get(transmitter) ?? [];
  }

  /** The gangs in force on a track. */
  gangsOn(track: PartId): Gang[] {
    return gangsOn(this.#links, track);
  }
}

/** The parts by what each is linked to. */
function byEnd(
  parts: readonly Part[],
  linkOf: (part: PartId) => Link<string | null> | undefined,
): ReadonlyMap<string, SaidOf[]> {
  const found = new Map<string, SaidOf[]>();
  for (const { id } of parts) {
    const link = linkOf(id);
    if (!link || link.value === null) continue;
    addTo(found, link.value, { part: id, by: link.by });
  }
  return found;
}

function addTo<Found>(lists: Map<string, Found[]>, end: string, found: Found): void {
  const others = lists.get(end);
  if (others) others.push(found);
  else lists.set(end, [found]);
}
