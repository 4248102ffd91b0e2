import type { FactId } from '../shared/ids.ts';
import { type Gang, gangNamed, gangsOn } from './gang-links.ts';
import {
  type PluggedLead,
  pluggedLead,
  type Socket,
  type SwitchedInputs,
  socketKey,
  switchedInputs,
} from './leads.ts';
import { LEAD, linkOver, SOCKET, TUNED, tunedTo, WORN, wornBy, writesOfItem } from './links.ts';
import type { Lead, LineItem, Link, Links, Part, PartId, Rig, VoiceId } from './model.ts';

/** A part of the rig, and the fact that says what it is linked to. */
export interface SaidOf {
  readonly part: PartId;
  readonly by: FactId;
}

/**
 * The chain at one place on the line, read from the body and from the recorder. It moves along the line. What is read,
 * and what a move changes, is noted by the same names, so whoever computes something from it can tell whether that would
 * come out as before.
 */
export class Chain {
  /** What has been read; whoever wants to know puts a set of its own here. */
  noted = new Set<string>();
  /** What the moves have changed; whoever has seen to it clears it. */
  readonly changed = new Set<string>();
  readonly #rig: Rig;
  readonly #switched: SwitchedInputs;
  #links: Map<string, Link>;
  #leads: Map<string, Link<Lead>>;

  constructor(rig: Rig, links: Links) {
    this.#rig = rig;
    this.#switched = switchedInputs(rig);
    this.#links = new Map(links);
    this.#leads = leadsIn(links);
  }

  /** The link by this name, as `Links` gives it. */
  get(name: string): Link | undefined {
    this.noted.add(name);
    return this.#links.get(name);
  }

  /** The lead that sits in a socket, if one does. */
  leadIn(socket: Socket): PluggedLead | undefined {
    this.noted.add(`into:${socket.input}`);
    const id = this.#links.get(socketKey(this.#switched, socket))?.value as string | undefined;
    const link = id === undefined ? undefined : this.#leads.get(id);
    // The lead plugged there last may have gone elsewhere since: then nothing sits there.
    if (id === undefined || link?.value.to !== socket.input) return undefined;
    if (this.#switched.has(socket.input) && link.value.position !== socket.position) return undefined;
    return { id, link, pushedOutOf: null };
  }

  /** The leads that begin at an output or a hardline voice, and where they are. */
  leadsFrom(end: PartId | VoiceId): PluggedLead[] {
    this.noted.add(`from:${end}`);
    const found: PluggedLead[] = [];
    for (const [id, link] of this.#leads) {
      if (link.value.from === end) found.push(pluggedLead(this.#links, this.#switched, id, link));
    }
    return found;
  }

  /** The transmitters a voice wears, in the order of the rig. */
  packsOn(voice: VoiceId): SaidOf[] {
    this.noted.add(`packs:${voice}`);
    return linkedTo(this.#rig.transmitters, voice, (id) => wornBy(this.#links, id));
  }

  /** The receiver channels tuned to a transmitter, in the order of the rig. */
  channelsOf(transmitter: PartId): SaidOf[] {
    this.noted.add(`channels:${transmitter}`);
    return linkedTo(this.#rig.channels, transmitter, (id) => tunedTo(this.#links, id));
  }

  /** The gangs that hold on a track. */
  gangsOn(track: PartId): Gang[] {
    this.noted.add(`gangs:${track}`);
    return gangsOn(this.#links, track);
  }

  /** One item further along the line. */
  pass(item: LineItem): void {
    for (const [name, value, said = item.fact] of writesOfItem(item, this.#links.keys())) {
      const old = this.#links.get(name);
      const link = linkOver(old, value, said);
      this.#mark(name, old);
      this.#links.set(name, link);
      if (name.startsWith(LEAD)) this.#leads.set(name.slice(LEAD.length), link as Link<Lead>);
      this.#mark(name, link);
    }
  }

  /** At another place on the line, whose links these are. A link said by the same fact is the same link. */
  jump(links: Map<string, Link>): void {
    const before = this.#links;
    for (const [name, old] of before) if (links.get(name)?.by !== old.by) this.#mark(name, old);
    this.#links = links;
    this.#leads = leadsIn(links);
    for (const [name, link] of links) if (before.get(name)?.by !== link.by) this.#mark(name, link);
  }

  /** Marks what reading this link, or anything found by way of it, would have noted. */
  #mark(name: string, link: Link | undefined): void {
    this.changed.add(name);
    if (!link?.value) return;
    if (name.startsWith(LEAD)) {
      const { from, to } = link.value as Lead;
      this.changed.add(`from:${from}`).add(`into:${to}`);
    } else if (name.startsWith(SOCKET)) this.#markLead(link.value as string);
    else if (name.startsWith(WORN)) this.changed.add(`packs:${link.value}`);
    else if (name.startsWith(TUNED)) this.changed.add(`channels:${link.value}`);
    else {
      const gang = gangNamed(name);
      if (gang) this.changed.add(`gangs:${gang.track}`);
    }
  }

  /** A lead that is pushed out, or is so no more, is told anew at both of its ends. */
  #markLead(id: string): void {
    const lead = this.#leads.get(id)?.value;
    if (lead) this.changed.add(`from:${lead.from}`).add(`into:${lead.to}`);
  }
}

const leadsIn = (links: Links): Map<string, Link<Lead>> => {
  const leads = new Map<string, Link<Lead>>();
  for (const [name, link] of links) {
    if (name.startsWith(LEAD)) leads.set(name.slice(LEAD.length), link as Link<Lead>);
  }
  return leads;
};

function linkedTo(
  parts: readonly Part[],
  end: string,
  linkOf: (part: PartId) => Link<string | null> | undefined,
): SaidOf[] {
  const found: SaidOf[] = [];
  for (const { id } of parts) {
    const link = linkOf(id);
    if (link?.value === end) found.push({ part: id, by: link.by });
  }
  return found;
}
