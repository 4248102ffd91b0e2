import { formatMhz } from '../../app/commands/typed.ts';
import type { Day, FactOf, ListenerFields } from '../../day/model.ts';
import { RECORDER } from '../../upkeep/due/day-devices.ts';
import { listOf, partName } from './chain.ts';

type PrepFact = FactOf<
  | 'guards-set'
  | 'carrier-described'
  | 'band-described'
  | 'transmitters-switched'
  | 'cells-changed'
  | 'devices-jammed'
  | 'timecode-compared'
  | 'devices-described'
  | 'card-described'
  | 'shift-planned'
  | 'run-described'
  | 'leads-described'
  | 'listener-described'
>;

/** A device's name: a pack of the rig, the recorder, a listener's receiver, or whatever else was described. */
export function deviceName(day: Day, id: string): string {
  if (id === RECORDER) return day.header.recorder || 'Recorder';
  const listener = day.upkeep.listeners.get(id);
  if (listener) return receiverWords(listener);
  return day.rig.byId.get(id)?.name ?? day.upkeep.devices.get(id)?.name ?? id;
}

/** `'IFB 2 of Boom operator'`. */
const receiverWords = ({ receiver, name }: ListenerFields): string =>
  `${receiver || 'receiver'} of ${name ?? 'a listener'}`;

export function prepWords(day: Day, fact: PrepFact): string {
  const devices = (ids: readonly string[]): string =>
    ids.length > 4 ? `${ids.length} devices` : listOf(ids.map((id) => deviceName(day, id)));
  switch (fact.kind) {
    case 'guards-set':
      return 'minimum spacing set';
    case 'carrier-described':
      return described(fact.fields.name ?? day.upkeep.carriers.get(fact.carrier)?.name, fact.fields);
    case 'band-described':
      return described(fact.fields.name ?? day.upkeep.bands.get(fact.band)?.name, fact.fields);
    case 'transmitters-switched':
      return `${listOf(fact.transmitters.map((id) => partName(day.rig, id)))} switched ${fact.on ? 'on' : 'off'}`;
    case 'cells-changed':
      return `fresh batteries in ${devices(fact.devices)}`;
    case 'devices-jammed':
      return `${devices(fact.devices)} jammed from ${deviceName(day, fact.from)}`;
    case 'timecode-compared':
      return `${deviceName(day, fact.device)} compared with ${deviceName(day, fact.from)}`;
    case 'devices-described':
      return described(devices(fact.devices), fact.fields);
    case 'card-described':
      return described(fact.fields.name ?? day.upkeep.cards.get(fact.card)?.name ?? 'card', fact.fields);
    case 'shift-planned':
      return 'hours of the day set';
    case 'run-described':
      return described(fact.fields.name ?? day.upkeep.runs.get(fact.run)?.name ?? 'cable run', fact.fields);
    case 'leads-described':
      return fact.leads.length === 1 ? 'a lead edited' : `${fact.leads.length} leads edited`;
    case 'listener-described':
      return listenerFactWords(day, fact);
  }
}

function described(
  name: string | undefined,
  { khz, struck }: { khz?: number | null | undefined; struck?: boolean | undefined },
): string {
  if (struck) return `${name ?? 'something'} deleted`;
  return khz ? `${name ?? 'carrier'} on ${formatMhz(khz)} MHz` : `${name ?? 'something'} edited`;
}

function listenerFactWords(day: Day, { listener, fields }: FactOf<'listener-described'>): string {
  const known = { ...day.upkeep.listeners.get(listener), ...fields };
  const said = Object.keys(fields);
  const receiver = receiverWords(known);
  if (said.length === 1 && fields.handedOut !== undefined)
    return `${receiver} ${fields.handedOut ? 'handed out' : 'returned'}`;
  if (said.length === 1 && fields.cellsAtMs) return `fresh batteries in ${receiver}`;
  return described(known.name ?? 'listener', fields);
}
