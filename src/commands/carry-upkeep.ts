import type { Day } from '../day/model.ts';
import type { Draft } from '../facts/fact.ts';
import { leadsStanding } from './what-stands.ts';

const RECORDER = 'recorder';

/**
 * What of radio, batteries and cables is as true tomorrow as today: guards, other carriers, bands, devices, runs and
 * leads. Cells, jams, cards and the hours are of the day, and what was said of a struck pack or its lead stays with it.
 */
export function upkeepOf(day: Day): Draft[] {
  const { upkeep, rig } = day;
  const standing = new Set(leadsStanding(day).map(({ lead }) => lead));
  const leads = [...upkeep.leads]
    .filter(([lead]) => standing.has(lead))
    .map(([lead, fields]) => ({ lead, fields }));
  const present = <T extends { struck?: boolean | undefined }>(all: ReadonlyMap<string, T>): [string, T][] =>
    [...all].filter(([, { struck }]) => !struck);
  const drafts: (Draft | false)[] = [
    Object.keys(upkeep.guards).length > 0 && { kind: 'guards-set', guards: upkeep.guards },
    ...present(upkeep.carriers).map(
      ([carrier, fields]): Draft => ({ kind: 'carrier-described', carrier, fields }),
    ),
    ...present(upkeep.bands).map(([band, fields]): Draft => ({ kind: 'band-described', band, fields })),
    ...present(upkeep.devices)
      .filter(([device, { name }]) => device === RECORDER || rig.byId.has(device) || name)
      .map(([device, fields]): Draft => ({ kind: 'devices-described', devices: [device], fields })),
    ...present(upkeep.runs).map(([run, fields]): Draft => ({ kind: 'run-described', run, fields })),
    leads.length > 0 && { kind: 'leads-described', leads: leads.slice(0, 500) },
  ];
  return drafts.filter((draft) => draft !== false);
}
