import type { Lead, Link, Links, Open, PartId, Rig, SelectorPosition } from '../model.ts';
import { key, LEAD, type LinkReader, SOCKET } from './links.ts';

// A lead records where it was plugged; a socket records what was last plugged into it. A lead whose socket
// was taken by another hangs free, and stays so when that one leaves.

/** A lead and where it is plugged at one place on the line. */
export interface PluggedLead {
  readonly id: string;
  readonly link: Link<Lead>;
  /** The socket another lead pushed it out of. */
  readonly pushedOutOf: Socket | null;
}

export interface Socket {
  readonly input: PartId;
  readonly position: Open<SelectorPosition>;
}

/** The inputs with two sockets, one at each position of a selector. */
export type SwitchedInputs = ReadonlySet<PartId>;

export const switchedInputs = ({ selectors }: Pick<Rig, 'selectors'>): SwitchedInputs =>
  new Set(selectors.flatMap(({ input }) => input ?? []));

/** The key of the link that says which lead is in a socket. */
export const socketKey = (switched: SwitchedInputs, { input, position }: Socket): string =>
  key.socket(input, switched.has(input) ? position : undefined);

/** Whether this rig lacks the link's socket: sockets are written both with and without a selector. */
export const isOtherSocket = (switched: SwitchedInputs, name: string): boolean => {
  if (!name.startsWith(SOCKET)) return false;
  const [input = '', position] = name.slice(SOCKET.length).split('/');
  return switched.has(input) !== (position !== undefined);
};

/** Where a lead is, from its own link and its socket's. */
export function pluggedLead(
  links: LinkReader,
  switched: SwitchedInputs,
  id: string,
  link: Link<Lead>,
): PluggedLead {
  const { to: input, position } = link.value;
  if (input === null) return { id, link, pushedOutOf: null };
  const socket = { input, position };
  if (links.get(socketKey(switched, socket))?.value === id) return { id, link, pushedOutOf: null };
  return { id, link: { ...link, value: { ...link.value, to: null } }, pushedOutOf: socket };
}

/** Every lead that was ever plugged, and where it is. */
export function* leadsOf(rig: Pick<Rig, 'selectors'>, links: Links): Generator<PluggedLead> {
  const switched = switchedInputs(rig);
  for (const [name, link] of links) {
    if (name.startsWith(LEAD))
      yield pluggedLead(links, switched, name.slice(LEAD.length), link as Link<Lead>);
  }
}
