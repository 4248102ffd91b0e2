import type { ListenerFields } from '../../facts/kinds/listener-described.ts';
import type { Day, Part, PartId } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import { hasSeveralRigs } from '../recorders/recorder-parts.ts';
import { recordersOf } from '../recorders/rolling.ts';
import { answersNow } from './answers.ts';

/** Somebody who hears the sound as it is made. A text that nobody said is empty. */
export interface Listener {
  readonly id: string;
  readonly name: string;
  readonly receiver: string;
  readonly channel: string;
  readonly hears: string;
  /** What `hears` names, if it is a part that stands in the rig. */
  readonly part: PartId | undefined;
  readonly cellsAtMs: number | null;
  readonly handedOut: boolean;
}

/** In the order in which they were entered. */
export const listenersOf = (day: Day): Listener[] =>
  [...day.upkeep.listeners].flatMap(([id, said]) => (said.struck ? [] : listener(day, id, said)));

/** Who still has a receiver. */
export const stillOut = (day: Day): Listener[] => listenersOf(day).filter(({ handedOut }) => handedOut);

/** One receiver that several people are said to have at once. */
export interface SharedReceiver {
  readonly receiver: string;
  readonly listeners: readonly Listener[];
}

/** Receivers handed out to more than one, in the order of their first listeners. */
export function receiversShared(day: Day): SharedReceiver[] {
  const byName = new Map<string, Listener[]>();
  for (const one of stillOut(day)) {
    const name = one.receiver.toLowerCase().replace(/\s+/g, '');
    if (name !== '') byName.set(name, [...(byName.get(name) ?? []), one]);
  }
  return [...byName.values()]
    .filter((listeners) => listeners.length > 1)
    .map((listeners) => ({ receiver: listeners[0]!.receiver, listeners }));
}

function listener(day: Day, id: string, said: ListenerFields): Listener {
  const part = day.rig.byId.get(said.part ?? '');
  return {
    id,
    name: said.name ?? '',
    receiver: said.receiver ?? '',
    channel: said.channel ?? '',
    hears: part ? feedName(day, part) : (said.hears ?? ''),
    part: part?.id,
    cellsAtMs: day.upkeep.cells.get(id)?.atMs ?? null,
    handedOut: said.handedOut ?? false,
  };
}

/** What there is to hear: the mixes, and the sends that carry sound. */
export const feedsOf = ({ rig }: Day): Part[] => [
  ...rig.tracks.filter(({ mix }) => mix),
  ...rig.sends.filter(({ reserved }) => reserved !== 'timecode'),
];

/** A mix with only a number is called so; a part by its recorder as well where there are several. */
export function feedName(day: Day, part: Part): string {
  const home = hasSeveralRigs(day) && recordersOf(day).find(({ id }) => id === recorderOfPart(part));
  const name = part.mix ? mixName(day, part) : part.name;
  return home ? `${home.name} ${name}` : name;
}

function mixName(day: Day, { id, name }: Part): string {
  const said = answersNow(day).tracks.find(({ track }) => track.id === id)?.name ?? name;
  if (!/^\d+$/.test(said)) return said;
  return day.rig.tracks.filter(({ mix }) => mix).length > 1 ? `Mix ${said}` : 'Mix';
}
