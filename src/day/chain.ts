import type { Fact } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';
import { leadsOf, linkOver, type PluggedLead, tunedTo, wornBy, writesOf } from './links.ts';
import type { Lead, Link, Links, PartId, Rig, VoiceId } from './model.ts';

/** A part of the rig, and the fact that says what it is linked to. */
export interface SaidOf {
  readonly part: PartId;
  readonly by: FactId;
}

/**
 * The chain at one place on the line, read from the body and from the recorder. It moves along the line, and knows what
 * has changed since it was last asked; it also notes what is read, so that whoever computes something from it can tell
 * whether that would come out as before.
 */
export class Chain {
  readonly #rig: Rig;
  readonly #outputsOf = new Map<PartId, PartId[]>();
  #links: Map<string, Link>;
  #leads: Map<string, Link<Lead>>;
  #changed = new Set<string>();
  #noted: Set<string> | null = null;

  constructor(rig: Rig, links: Links) {
    this.#rig = rig;
    this.#links = new Map(links);
    this.#leads = leadsIn(links);
    for (const { id, reserved, carries = [] } of rig.outputs)
      if (!reserved) for (const channel of carries) push(this.#outputsOf, channel, id);
  }

  /** The link by this name, as `Links` gives it. */
  get(name: string): Link | undefined {
    this.#noted?.add(name);
    return this.#links.get(name);
  }

  /** The leads plugged into an input, in the order in which they were first plugged anywhere. */
  leadsInto(input: PartId): PluggedLead[] {
    this.#noted?.add(`into:${input}`);
    return this.#leadsWhere(({ to, from }) => to === input && Boolean(from));
  }

  /** The leads that begin at an output or a hardline voice. */
  leadsFrom(end: PartId | VoiceId): PluggedLead[] {
    this.#noted?.add(`from:${end}`);
    return this.#leadsWhere(({ from }) => from === end);
  }

  /** The transmitters a voice wears, in the order of the rig. */
  packsOn(voice: VoiceId): readonly SaidOf[] {
    this.#noted?.add(`packs:${voice}`);
    const packs: SaidOf[] = [];
    for (const { id } of this.#rig.transmitters) {
      const worn = wornBy(this.#links, id);
      if (worn?.value === voice) packs.push({ part: id, by: worn.by });
    }
    return packs;
  }

  /** The receiver channels tuned to a transmitter, in the order of the rig. */
  channelsOf(transmitter: PartId): readonly SaidOf[] {
    this.#noted?.add(`channels:${transmitter}`);
    const channels: SaidOf[] = [];
    for (const { id } of this.#rig.channels) {
      const tuned = tunedTo(this.#links, id);
      if (tuned?.value === transmitter) channels.push({ part: id, by: tuned.by });
    }
    return channels;
  }

  /** The outputs that carry a channel and are not kept for something else. */
  outputsOf(channel: PartId): readonly PartId[] {
    return this.#outputsOf.get(channel) ?? [];
  }

  /** Does the work, and says what it read. */
  noting<T>(work: () => T): { readonly value: T; readonly reads: readonly string[] } {
    const noted = new Set<string>();
    this.#noted = noted;
    const value = work();
    this.#noted = null;
    return { value, reads: [...noted] };
  }

  /** Adds a name to what the work in hand has read. */
  note(name: string): void {
    this.#noted?.add(name);
  }

  /** One item further along the line. */
  pass(fact: Fact): void {
    for (const [name, value] of writesOf(fact)) {
      const old = this.#links.get(name);
      const link = linkOver(old, value, fact);
      this.#mark(name, old);
      this.#mark(name, link);
      this.#links.set(name, link);
      const lead = leadName(name);
      if (lead) this.#leads.set(lead, link as Link<Lead>);
    }
  }

  /** At another place on the line, whose links these are. A link said by the same fact is the same link. */
  jump(links: Map<string, Link>): void {
    const before = this.#links;
    for (const [name, old] of before) if (links.get(name)?.by !== old.by) this.#mark(name, old);
    for (const [name, link] of links) if (before.get(name)?.by !== link.by) this.#mark(name, link);
    this.#links = links;
    this.#leads = leadsIn(links);
  }

  /** What has changed since this was last asked: names as they are noted when read. */
  takeChanged(): Set<string> {
    const changed = this.#changed;
    this.#changed = new Set();
    return changed;
  }

  /** Marks what reading this link, or anything found by way of it, would have noted. */
  #mark(name: string, link: Link | undefined): void {
    this.#changed.add(name);
    if (!link?.value) return;
    if (name.startsWith('lead:')) {
      const { from, to } = link.value as Lead;
      this.#changed.add(`from:${from}`).add(`into:${to}`);
    } else if (name.startsWith('worn:')) this.#changed.add(`packs:${link.value}`);
    else if (name.startsWith('tuned:')) this.#changed.add(`channels:${link.value}`);
  }

  #leadsWhere(wanted: (lead: Lead) => boolean): PluggedLead[] {
    const found: PluggedLead[] = [];
    for (const [id, link] of this.#leads) if (wanted(link.value)) found.push({ id, link });
    return found;
  }
}

const leadsIn = (links: Links): Map<string, Link<Lead>> =>
  new Map([...leadsOf(links)].map(({ id, link }) => [id, link]));

const leadName = (name: string): string | null =>
  name.startsWith('lead:') ? name.slice('lead:'.length) : null;

function push<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}
