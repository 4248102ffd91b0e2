import type { Fact, FactOf } from '../../facts/fact.ts';
import { knew } from '../../facts/kinds/envelope.ts';
import { MIC_FIELDS, type MicField } from '../../facts/kinds/mic-mounted.ts';
import type { MoveWeights, Pins } from '../../facts/kinds/plan-settings.ts';
import {
  FIRST_RECORDER,
  type RecorderSettings,
  SETTING_FIELDS,
  type SettingField,
} from '../../facts/kinds/recorder-set.ts';
import type {
  Day,
  LineItem,
  Link,
  Links,
  LinkWrite,
  Need,
  Open,
  PartId,
  SelectorPosition,
  TakeId,
  VoiceId,
  Write,
} from '../model.ts';
import { placeOfTake } from '../takes.ts';
import { gangName, gangNamesOn } from './gang-links.ts';

// The chain is a set of links, each holding one value at a time: who wears a transmitter, where a lead goes.
// A change on the line writes some of them. `answers.ts` computes what they mean together.

/** Key prefixes of links that are also looked up from their other end. */
const WORN = 'worn:';
const TUNED = 'tuned:';
export const LEAD = 'lead:';
export const SOCKET = 'socket:';

/** Which pack a voice had last. It stays when the pack goes, and never causes a conflict between phones. */
export const HAD_PACK = 'had-pack:';

/** The keys of the links. */
export const key = {
  had: (voice: VoiceId) => HAD_PACK + voice,
  worn: (transmitter: PartId) => WORN + transmitter,
  tuned: (channel: PartId) => TUNED + channel,
  lead: (lead: string) => LEAD + lead,
  /** With a position: what is in that end of the input's selector. */
  socket: (input: PartId, position?: Open<SelectorPosition>) =>
    position ? `${SOCKET}${input}/${position}` : SOCKET + input,
  thrown: (selector: PartId) => `thrown:${selector}`,
  sent: (input: PartId) => `sent:${input}`,
  muted: (part: PartId) => `muted:${part}`,
  named: (track: PartId) => `named:${track}`,
  need: (voice: VoiceId) => `need:${voice}`,
  pins: (voice: VoiceId, recorder: PartId = FIRST_RECORDER) =>
    recorder === FIRST_RECORDER ? `pins:${voice}` : `pins:${voice}/${recorder}`,
  out: (part: string) => `out:${part}`,
  weights: 'weights',
  roll: (recorder: PartId = FIRST_RECORDER) => (recorder === FIRST_RECORDER ? 'roll' : `roll:${recorder}`),
  rolling: 'rolling',
  mic: (field: MicField | 'carried', voice: VoiceId, transmitter: PartId | null) =>
    `mic:${field}:${voice}/${transmitter ?? ''}`,
  set: (field: SettingField, recorder: PartId = FIRST_RECORDER) => `set:${recorder}/${field}`,
} as const;

/**
 * The links that a fact writes; none if it does not change the chain. Ending every gang of a track writes the
 * existing ones, so `names` are the keys before it.
 */
export function writesOf(fact: Fact, names: Iterable<string> = []): readonly Write[] {
  switch (fact.kind) {
    case 'transmitter-worn':
      return [
        [key.worn(fact.transmitter), fact.voice],
        ...(fact.voice === null ? [] : [[key.had(fact.voice), fact.transmitter] as const]),
        ...(fact.voice !== null && fact.mic
          ? [[key.mic('model', fact.voice, fact.transmitter), fact.mic] as const]
          : []),
      ];
    case 'mic-mounted':
      return micWrites(fact);
    case 'channels-tuned':
      return fact.tunings.map(({ channel, transmitter }) => [key.tuned(channel), transmitter]);
    case 'leads-plugged':
      return fact.leads.flatMap(leadWrites);
    case 'selectors-thrown':
      return fact.selectors.map((selector) => [key.thrown(selector), fact.position]);
    case 'inputs-sent':
      return fact.routes.map(({ input, tracks }) => [key.sent(input), tracks]);
    case 'mute-set':
      return [[key.muted(fact.part), fact.muted]];
    case 'gang-declared':
      return fact.sources.length > 0
        ? [[gangName(fact.track, fact.sources), true]]
        : gangNamesOn(names, fact.track).map((name) => [name, false]);
    case 'gang-ended':
      return [[gangName(fact.track, fact.sources), false]];
    case 'track-named':
      return [[key.named(fact.track), fact.name]];
    case 'voices-needed':
      return fact.voices.map(({ voice, need }) => [key.need(voice), need]);
    case 'voice-pinned':
      return [[key.pins(fact.voice, fact.recorder), fact.pins]];
    case 'out-marked':
      return [[key.out(fact.part), fact.out]];
    case 'moves-weighed':
      return [[key.weights, fact.weights]];
    case 'roll-changed':
      return [[key.roll(fact.recorder), fact.roll]];
    case 'recorders-rolling':
      return [[key.rolling, fact.recorders]];
    case 'recorder-set':
      return SETTING_FIELDS.filter((field) => fact.settings[field] !== undefined).map((field) => [
        key.set(field, fact.recorder),
        fact.settings[field],
      ]);
    default:
      return [];
  }
}

/**
 * Plugging a lead also writes the socket. Whatever was in it is thereby out, wherever this write ends up on
 * the line: who is pushed out is derived and never stored. Whether an input has one socket, or two
 * because of a selector, depends on the rig, so both are written.
 */
function leadWrites({ lead, from, to, position = 'a' }: FactOf<'leads-plugged'>['leads'][number]): Write[] {
  const plugged: Write = [key.lead(lead), { from, to, position }];
  return to === null ? [plugged] : [plugged, [key.socket(to), lead], [key.socket(to, position), lead]];
}

/** Whatever is said of a mic today is no longer only as it was the day before. */
const micWrites = ({ voice, transmitter, mic, carried = false }: FactOf<'mic-mounted'>): Write[] => [
  ...MIC_FIELDS.filter((field) => mic[field] !== undefined).map(
    (field): Write => [key.mic(field, voice, transmitter), mic[field]],
  ),
  [key.mic('carried', voice, transmitter), carried],
];

/** Whether the author of either write knew of the other. */
const isEitherKnown = (fact: Pick<Fact, 'id' | 'seen'>, { by, seen }: LinkWrite): boolean =>
  knew(fact, by) || knew(seen ? { id: by, seen } : { id: by }, fact.id);

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/**
 * The link after a fact writes over the one before. Values from facts that did not know of each other stay as
 * rivals; if either knew of the other, the order was deliberate.
 */
export function linkOver(old: Link | undefined, value: unknown, fact: Fact): Link {
  const { id: by, seen } = fact;
  const write: LinkWrite = seen ? { value, by, seen } : { value, by };
  if (!old || (!old.rivals && knew(fact, old.by))) return write;
  const rivals = [old, ...(old.rivals ?? [])]
    .filter((link) => !isEitherKnown(fact, link) && !same(link.value, value))
    .map(({ rivals: _, ...link }: Link) => link);
  return rivals.length > 0 ? { ...write, rivals } : write;
}

/** What an item writes: nothing if retracted, the resolved value after a conflict. `names`: keys so far. */
export const writesOfItem = (
  { fact, takenBack, resolved }: LineItem,
  names: Iterable<string>,
): readonly Write[] => (takenBack ? [] : (resolved ?? writesOf(fact, names)));

/** Applies what a fact, or its resolution, writes; false if it writes nothing. */
export function applyWrites(
  links: Map<string, Link>,
  fact: Fact,
  writes = writesOf(fact, links.keys()),
): boolean {
  for (const [name, value, said = fact] of writes) links.set(name, linkOver(links.get(name), value, said));
  return writes.length > 0;
}

/** Items between two saved copies of the links. */
export const CHECKPOINT_EVERY = 1024;

/** The links just before the item at `index`; `day.line.length` means now. */
export function linksAt(day: Pick<Day, 'line' | 'memory' | 'tail'>, index: number): Map<string, Link> {
  if (index >= day.line.length) return new Map(day.tail);
  const from = Math.floor(index / CHECKPOINT_EVERY);
  const links = new Map(day.memory.checkpoints[from]);
  for (let at = from * CHECKPOINT_EVERY; at < index; at += 1) {
    const item = day.line[at]!;
    applyWrites(links, item.fact, writesOfItem(item, links.keys()));
  }
  return links;
}

/** The links just before a take, which hold for it. */
export const linksAtTake = (day: Day, take: TakeId): Links => linksAt(day, placeOfTake(day, take));

/** Anything that looks up a link by its key. */
export type LinkReader = Pick<Links, 'get'>;

const read = <Value>(links: LinkReader, name: string): Link<Value> | undefined =>
  links.get(name) as Link<Value> | undefined;

export const wornBy = (links: LinkReader, transmitter: PartId) =>
  read<VoiceId | null>(links, key.worn(transmitter));
export const hadPack = (links: LinkReader, voice: VoiceId) => read<PartId>(links, key.had(voice));
export const tunedTo = (links: LinkReader, channel: PartId) => read<PartId | null>(links, key.tuned(channel));
export const thrownTo = (links: LinkReader, selector: PartId) =>
  read<Open<SelectorPosition>>(links, key.thrown(selector));
export const sentTo = (links: LinkReader, input: PartId) => read<readonly PartId[]>(links, key.sent(input));
export const mutedAt = (links: LinkReader, part: PartId) => read<boolean>(links, key.muted(part));
export const nameTypedFor = (links: LinkReader, track: PartId) =>
  read<string | null>(links, key.named(track));
export const needOf = (links: LinkReader, voice: VoiceId) => read<Open<Need>>(links, key.need(voice));
export const pinsOf = (links: LinkReader, voice: VoiceId, recorder?: PartId) =>
  read<Pins | null>(links, key.pins(voice, recorder));
export const outAt = (links: LinkReader, part: string) => read<boolean>(links, key.out(part));
export const weightsIn = (links: LinkReader) => read<MoveWeights>(links, key.weights);
export const setTo = <Field extends SettingField>(links: LinkReader, field: Field, recorder?: PartId) =>
  read<NonNullable<RecorderSettings[Field]>>(links, key.set(field, recorder));
export const rollingIn = (links: LinkReader) => read<readonly PartId[]>(links, key.rolling);
export const rollIn = (links: LinkReader, recorder?: PartId) => read<string>(links, key.roll(recorder));
