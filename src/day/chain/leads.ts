import type { Lead, Link, Links, Open, PartId, Rig, SelectorPosition } from '../model.ts';
import { key, LEAD, type LinkReader, SOCKET } from './links.ts';

// A lead says where it was plugged; a socket says what was plugged into it last. A lead whose socket has been taken by
// another hangs free, and goes on hanging when that one leaves.

/** A lead and where it is plugged at one place on the line. */
export interface PluggedLead {
  readonly id: string;
  readonly link: Link<Lead>;
  /** The socket that another lead has pushed it out of. */
  readonly pushedOutOf: Socket | null;
}

export interface Socket {
  readonly input: PartId;
  readonly position: Open<SelectorPosition>;
}

/** Which inputs have two sockets, one at each position of a selector. */
export type SwitchedInputs = ReadonlySet<PartId>;

export const switchedInputs = ({ selectors }: Pick<Rig, 'selectors'>): SwitchedInputs =>
  new Set(selectors.flatMap(({ input }) => input ?? []));

/** The name of the link that says what sits in a socket. */
export const socketKey = (switched: SwitchedInputs, { input, position }: Socket): string =>
  key.socket(input, switched.has(input) ? position : undefined);

/** Whether a link speaks of a socket that this rig does not have: sockets are written as if with and without a selector. */
export const isOtherSocket = (switched: SwitchedInputs, name: string): boolean => {
  if (!name.startsWith(SOCKET)) return false;
  const [input = '', position] = name.slice(SOCKET.length).split('/');
  return switched.has(input) !== (position !== undefined);
};

/** Where a lead is, from what was said of it and of its socket. */
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

/** Every lead that has been plugged anywhere, and where it is. */
export function* leadsOf(rig: Pick<Rig, 'selectors'>, links: Links): Generator<PluggedLead> {
  const switched = switchedInputs(rig);
  for (const [name, link] of links) {
    if (name.startsWith(LEAD))
      yield pluggedLead(links, switched, name.slice(LEAD.length), link as Link<Lead>);
  }
}
