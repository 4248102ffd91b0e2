import type { Fact, FactOf } from '../facts/fact.ts';
import type { DeviceId } from '../facts/kinds/envelope.ts';
import type { ListenerFields } from '../facts/kinds/listener-described.ts';
import type { BandFields, CarrierFields, GuardFields } from '../facts/kinds/radio-planned.ts';
import type { LeadFields, RunFields } from '../facts/kinds/runs-described.ts';
import type { CardFields, DeviceFields, ShiftFields } from '../facts/kinds/upkeep-logged.ts';
import type { FactId } from '../shared/ids.ts';

export interface CellsSaid {
  readonly atMs: number;
  readonly runtimeHours: number | undefined;
  readonly by: FactId;
}

/** A device was set from another, or heard after it, which tells how far apart they were. */
export interface JamSaid {
  readonly device: DeviceId;
  readonly from: DeviceId;
  readonly atMs: number;
  readonly by: FactId;
  /** How far it was ahead; missing for a jam, after which it is not. */
  readonly heard?: { readonly offMs: number; readonly doubtMs: number };
}

/** Facts about radio, batteries, timecode, media, cables and listeners. Removed items are still included. */
export interface UpkeepSaid {
  readonly guards: GuardFields;
  readonly shift: ShiftFields;
  readonly carriers: ReadonlyMap<string, CarrierFields>;
  readonly bands: ReadonlyMap<string, BandFields>;
  /** Transmitters that were explicitly switched on or off. */
  readonly on: ReadonlyMap<string, boolean>;
  /** The latest fresh cells of each device, by when they went in. */
  readonly cells: ReadonlyMap<DeviceId, CellsSaid>;
  readonly jams: readonly JamSaid[];
  readonly devices: ReadonlyMap<DeviceId, DeviceFields>;
  readonly cards: ReadonlyMap<string, CardFields>;
  readonly runs: ReadonlyMap<string, RunFields>;
  readonly leads: ReadonlyMap<string, LeadFields>;
  readonly listeners: ReadonlyMap<string, ListenerFields>;
}

/** The same while a day is being folded. */
export interface MutableUpkeep extends UpkeepSaid {
  guards: GuardFields;
  shift: ShiftFields;
  readonly carriers: Map<string, CarrierFields>;
  readonly bands: Map<string, BandFields>;
  readonly on: Map<string, boolean>;
  readonly cells: Map<DeviceId, CellsSaid>;
  readonly jams: JamSaid[];
  readonly devices: Map<DeviceId, DeviceFields>;
  readonly cards: Map<string, CardFields>;
  readonly runs: Map<string, RunFields>;
  readonly leads: Map<string, LeadFields>;
  readonly listeners: Map<string, ListenerFields>;
}

export const newUpkeep = (): MutableUpkeep => ({
  guards: {},
  shift: {},
  carriers: new Map(),
  bands: new Map(),
  on: new Map(),
  cells: new Map(),
  jams: [],
  devices: new Map(),
  cards: new Map(),
  runs: new Map(),
  leads: new Map(),
  listeners: new Map(),
});

const merge = <Fields extends object>(all: Map<string, Fields>, id: string, fields: Fields): void => {
  all.set(id, { ...all.get(id), ...fields });
};

/** Applies one fact, if it is of this family. Facts come in order of ids, so the later one wins. */
export function applyUpkeep(said: MutableUpkeep, fact: Fact): void {
  switch (fact.kind) {
    case 'guards-set':
      said.guards = { ...said.guards, ...fact.guards };
      return;
    case 'shift-planned':
      said.shift = { ...said.shift, ...fact.shift };
      return;
    case 'carrier-described':
      merge(said.carriers, fact.carrier, fact.fields);
      return;
    case 'band-described':
      merge(said.bands, fact.band, fact.fields);
      return;
    case 'transmitters-switched':
      for (const id of fact.transmitters) said.on.set(id, fact.on);
      return;
    case 'cells-changed':
      for (const device of fact.devices) freshCells(said.cells, device, fact);
      return;
    case 'devices-jammed':
      for (const device of fact.devices)
        said.jams.push({ device, from: fact.from, atMs: fact.atMs ?? fact.at, by: fact.id });
      return;
    case 'timecode-compared': {
      const { device, from, atMs, offMs, doubtMs, id } = fact;
      said.jams.push({ device, from, atMs, by: id, heard: { offMs, doubtMs } });
      return;
    }
    case 'devices-described':
      for (const device of fact.devices) merge(said.devices, device, fact.fields);
      return;
    case 'card-described':
      merge(said.cards, fact.card, fact.fields);
      return;
    case 'run-described':
      merge(said.runs, fact.run, fact.fields);
      return;
    case 'leads-described':
      for (const { lead, fields } of fact.leads) merge(said.leads, lead, fields);
      return;
    case 'listener-described':
      merge(said.listeners, fact.listener, fact.fields);
      cellsOfListener(said.cells, fact);
      return;
    default:
  }
}

/** A swap entered late does not undo a more recent one. */
function freshCells(
  cells: Map<DeviceId, CellsSaid>,
  device: DeviceId,
  fact: Pick<FactOf<'cells-changed'>, 'at' | 'atMs' | 'runtimeHours' | 'id'>,
): void {
  const atMs = fact.atMs ?? fact.at;
  const known = cells.get(device);
  if (known && known.atMs > atMs) return;
  cells.set(device, { atMs, runtimeHours: fact.runtimeHours, by: fact.id });
}

/** Earlier versions said of the listener when fresh cells went in. */
function cellsOfListener(cells: Map<DeviceId, CellsSaid>, fact: FactOf<'listener-described'>): void {
  const { cellsAtMs } = fact.fields;
  if (cellsAtMs === null) cells.delete(fact.listener);
  else if (cellsAtMs !== undefined)
    freshCells(cells, fact.listener, { at: fact.at, atMs: cellsAtMs, id: fact.id });
}
