import { gangNamed } from '../../day/chain/gang-links.ts';
import { socketKey, switchedInputs } from '../../day/chain/leads.ts';
import { LEAD, wornBy } from '../../day/chain/links.ts';
import type { Day, FactId, Lead, Links, Need, PartId, SelectorPosition, VoiceId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';

/** What an action wrote over: the links before it, and the facts that it is made of. */
interface Over {
  readonly before: Links;
  readonly by: ReadonlySet<FactId>;
}

type Restoring = (day: Day, id: string, over: Over, name: string) => Draft | null;

/** How each kind of link is said again as it was, by the start of its key. */
const RESTORING: Readonly<Record<string, Restoring>> = {
  worn: packOn,
  tuned: (_day, channel, { before }, name) => ({
    kind: 'channels-tuned',
    tunings: [{ channel, transmitter: valueIn<PartId | null>(before, name) ?? null }],
  }),
  lead: (day, lead, over) => leadBack(day, lead, over),
  socket: socketBack,
  thrown: (_day, selector, { before }, name) => ({
    kind: 'selectors-thrown',
    selectors: [selector],
    position: valueIn<SelectorPosition>(before, name) ?? 'a',
  }),
  sent: (_day, input, { before }, name) => ({
    kind: 'inputs-sent',
    routes: [{ input, tracks: [...(valueIn<readonly PartId[]>(before, name) ?? [])] }],
  }),
  muted: (day, part, { before }, name) => ({
    kind: 'mute-set',
    what: day.rig.byId.get(part)?.type === 'transmitter' ? 'transmitter' : 'input',
    part,
    muted: valueIn<boolean>(before, name) ?? false,
  }),
  gang: (_day, _id, { before }, name) => ({
    kind: valueIn<boolean>(before, name) ? 'gang-declared' : 'gang-ended',
    ...gangNamed(name)!,
  }),
  mic: (_day, id, { before }, name) => micBack(id, valueIn<string | boolean | null>(before, name)),
  // Nobody was said to be needed or not: there is no way to say that again.
  need: (_day, voice, { before }, name) => {
    const need = valueIn<Need>(before, name);
    return need === undefined ? null : { kind: 'voices-needed', voices: [{ voice, need }] };
  },
};

/** A link that an action wrote, as it was before; null if there is nothing to say, or somebody is in the way. */
export function restored(day: Day, name: string, before: Links, by: ReadonlySet<FactId>): Draft | null {
  const [kind = '', ...id] = name.split(':');
  return RESTORING[kind]?.(day, id.join(':'), { before, by }, name) ?? null;
}

const valueIn = <Value>(links: Links, name: string): Value | undefined =>
  links.get(name)?.value as Value | undefined;

/** Not on somebody who has been given another pack since. */
function packOn(day: Day, transmitter: PartId, { before }: Over, name: string): Draft | null {
  const voice = valueIn<VoiceId | null>(before, name) ?? null;
  const hasOther = day.rig.transmitters.some(
    ({ id }) =>
      id !== transmitter && wornBy(day.tail, id)?.value === voice && wornBy(before, id)?.value !== voice,
  );
  return voice !== null && hasOther ? null : { kind: 'transmitter-worn', transmitter, voice };
}

/** A lead goes where it was, unless another has been plugged there since; one that was nowhere is pulled. */
function leadBack(day: Day, lead: string, { before, by }: Over): Draft | null {
  const was = valueIn<Lead>(before, LEAD + lead);
  const from = was?.from ?? valueIn<Lead>(day.tail, LEAD + lead)?.from ?? null;
  if (!was || was.to === null) return { kind: 'leads-plugged', leads: [{ lead, from, to: null }] };
  const { to, position } = was;
  const socket = socketKey(switchedInputs(day.rig), { input: to, position });
  const now = day.tail.get(socket);
  const isTaken = now && now.by !== before.get(socket)?.by && !by.has(now.by) && now.value !== lead;
  return isTaken ? null : { kind: 'leads-plugged', leads: [{ lead, from, to, position }] };
}

/** What was said of a mic: `place:v1/tx-1`. */
function micBack(name: string, was: string | boolean | null | undefined): Draft | null {
  const [, field = '', voice = '', transmitter = ''] = /^(\w+):(.*)\/(.*)$/.exec(name) ?? [];
  const of = { kind: 'mic-mounted', voice, transmitter: transmitter || null } as const;
  if (field === 'carried') return { ...of, mic: {}, carried: was === true };
  return { ...of, mic: { [field]: typeof was === 'string' ? was : null } };
}

/** The lead that was pushed out of a socket goes into it again, if it is still said to be there. */
function socketBack(day: Day, socket: string, over: Over, name: string): Draft | null {
  const lead = valueIn<string>(over.before, name);
  if (lead === undefined || lead === valueIn(day.tail, name)) return null;
  const [input] = socket.split('/');
  const [was, now] = [over.before, day.tail].map((links) => valueIn<Lead>(links, LEAD + lead));
  return was?.to === input && now?.to === input ? leadBack(day, lead, over) : null;
}
