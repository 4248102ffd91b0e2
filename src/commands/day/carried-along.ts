import { answersNow } from '../../day/answers/answers.ts';
import { outAt, weightsIn } from '../../day/chain/links.ts';
import { allPins } from '../../day/chain/pins.ts';
import type { Day, PartId } from '../../day/model.ts';
import { leadIds } from '../../day/recorders/lead-of-end.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Pins } from '../../facts/kinds/plan-settings.ts';
import { leadsInRig } from '../rig/not-struck.ts';

/**
 * What else is still true of a rig and cast tomorrow: parts out of order, packs switched off, pins, the cost
 * of moves, and typed track names that still fit.
 */
export function marksOf(day: Day): Draft[] {
  const { links } = answersNow(day);
  const off = day.rig.transmitters.map(({ id }) => id).filter((id) => day.upkeep.on.get(id) === false);
  const weights = weightsIn(links)?.value ?? {};
  return [
    ...[...canBeOut(day)]
      .filter((part) => outAt(links, part)?.value)
      .map((part): Draft => ({ kind: 'out-marked', part, out: true })),
    ...(off.length > 0
      ? [{ kind: 'transmitters-switched', transmitters: off, on: false } satisfies Draft]
      : []),
    ...pinsAlong(day),
    ...(Object.keys(weights).length > 0 ? [{ kind: 'moves-weighed', weights } satisfies Draft] : []),
    ...[...namesAlong(day)].map(([track, name]): Draft => ({ kind: 'track-named', track, name })),
  ];
}

/** Parts, leads and hardline voices; a plan also considers the lead that an unplugged voice would need. */
function canBeOut(day: Day): Set<string> {
  const voices = [...day.voices.values()].filter(({ struck }) => !struck).map(({ id }) => id);
  const ends = [...day.rig.byId.keys(), ...voices];
  return new Set([...ends, ...leadsInRig(day).map(({ lead }) => lead), ...ends.flatMap(leadIds)]);
}

function pinsAlong({ rig, voices, tail }: Day): Draft[] {
  return [...voices.values()].flatMap(({ id, struck }): Draft[] => {
    if (struck) return [];
    return allPins(rig, tail, id).flatMap(({ recorder, pins }): Draft[] => {
      const kept = Object.entries(pins).filter(
        ([, pinned]) => typeof pinned !== 'string' || rig.byId.has(pinned),
      );
      if (kept.length === 0) return [];
      const along = Object.fromEntries(kept) as Pins;
      return [{ kind: 'voice-pinned', voice: id, pins: along, ...(recorder && { recorder }) }];
    });
  });
}

/**
 * Typed names of tracks that will carry the same tomorrow: a mix, or a track that no pack can reach. Packs
 * come off, and a name typed for one wearer would hide the next one's.
 */
export function namesAlong(day: Day): ReadonlyMap<PartId, string> {
  const { inputs, tracks } = answersNow(day);
  const hasRadio = (track: PartId): boolean =>
    inputs.some(
      ({ reach }) =>
        reach.tracks.includes(track) && reach.arrival?.sources.some(({ channel }) => channel !== null),
    );
  return new Map(
    tracks
      .filter(({ track, typed }) => typed && (track.mix || !hasRadio(track.id)))
      .map(({ track, name }) => [track.id, name]),
  );
}

const RECORDER = 'recorder';

/**
 * What is still true tomorrow of radio, batteries and cables: guards, other carriers, bands, devices, runs,
 * leads, and who hears what: a receiver that did not come back is still out. Cells, jams, cards and hours belong to the day, and facts about a removed pack or its lead stay
 * behind.
 */
export function upkeepOf(day: Day): Draft[] {
  const { upkeep, rig } = day;
  const standing = new Set(leadsInRig(day).map(({ lead }) => lead));
  const leads = [...upkeep.leads]
    .filter(([lead]) => standing.has(lead))
    .map(([lead, fields]) => ({ lead, fields }));
  const present = <T extends { struck?: boolean | undefined }>(all: ReadonlyMap<string, T>): [string, T][] =>
    [...all].filter(([, { struck }]) => !struck);
  const listeners = present(upkeep.listeners);
  const hears = (device: string): boolean => listeners.some(([listener]) => listener === device);
  const drafts: (Draft | false)[] = [
    Object.keys(upkeep.guards).length > 0 && { kind: 'guards-set', guards: upkeep.guards },
    ...present(upkeep.carriers).map(
      ([carrier, fields]): Draft => ({ kind: 'carrier-described', carrier, fields }),
    ),
    ...present(upkeep.bands).map(([band, fields]): Draft => ({ kind: 'band-described', band, fields })),
    ...present(upkeep.devices)
      .filter(([device, { name }]) => device === RECORDER || rig.byId.has(device) || hears(device) || name)
      .map(([device, fields]): Draft => ({ kind: 'devices-described', devices: [device], fields })),
    ...present(upkeep.runs).map(([run, fields]): Draft => ({ kind: 'run-described', run, fields })),
    ...listeners.map(
      ([listener, { cellsAtMs: _, ...fields }]): Draft => ({ kind: 'listener-described', listener, fields }),
    ),
    leads.length > 0 && { kind: 'leads-described', leads: leads.slice(0, 500) },
  ];
  return drafts.filter((draft) => draft !== false);
}
