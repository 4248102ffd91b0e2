import { answersNow } from '../../day/answers/answers.ts';
import { outAt, pinsOf, weightsIn } from '../../day/chain/links.ts';
import type { Day, PartId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Pins } from '../../facts/kinds/plan-settings.ts';
import { leadsInRig } from '../rig/not-struck.ts';

/**
 * What was said of a rig and a cast besides what they are, and is as true tomorrow: what is out of order, packs that are
 * off, what a plan has to keep and what moves cost, and the names typed for tracks that still fit.
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

/** Parts, leads and whoever has a lead; a plan also speaks of the lead that somebody unplugged would need. */
function canBeOut(day: Day): Set<string> {
  const voices = [...day.voices.values()].filter(({ struck }) => !struck).map(({ id }) => id);
  const ends = [...day.rig.byId.keys(), ...voices];
  return new Set([
    ...ends,
    ...leadsInRig(day).map(({ lead }) => lead),
    ...ends.flatMap((end) => [`lead-${end}`, `lead2-${end}`]),
  ]);
}

function pinsAlong({ rig, voices, tail }: Day): Draft[] {
  return [...voices.values()].flatMap(({ id, struck }): Draft[] => {
    const said = Object.entries(pinsOf(tail, id)?.value ?? {});
    const kept = said.filter(([, pinned]) => typeof pinned !== 'string' || rig.byId.has(pinned));
    if (struck || kept.length === 0) return [];
    return [{ kind: 'voice-pinned', voice: id, pins: Object.fromEntries(kept) as Pins }];
  });
}

/**
 * The names typed for tracks that will have on them what they have now: a mix, or a track that no pack can arrive at. Packs
 * come off, and a name typed for whoever wore one would cover the name of whoever wears it next.
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
 * What of radio, batteries and cables is as true tomorrow as today: guards, other carriers, bands, devices, runs and
 * leads. Cells, jams, cards and the hours are of the day, and what was said of a struck pack or its lead stays with it.
 */
export function upkeepOf(day: Day): Draft[] {
  const { upkeep, rig } = day;
  const standing = new Set(leadsInRig(day).map(({ lead }) => lead));
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
