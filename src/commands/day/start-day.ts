import { answersNow } from '../../day/answers/answers.ts';
import { gangsOn } from '../../day/chain/gang-links.ts';
import { sentTo, thrownTo, tunedTo } from '../../day/chain/links.ts';
import type { Day, Header } from '../../day/model.ts';
import { rollingNow } from '../../day/recorders/rolling.ts';
import { headerNow } from '../../day/settings/settings.ts';
import type { Draft } from '../../facts/fact.ts';
import type { HeaderFields } from '../../facts/kinds/day-described.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult, Moment } from '../command.ts';
import { ifASource, ifInRig, leadsInRig } from '../rig/not-struck.ts';
import { marksOf, upkeepOf } from './carried-along.ts';
import { dateAt, nextDate, nextLabel } from './day-after.ts';
import { micsAlong } from './mics-along.ts';
import { scenesAlong } from './scenes-along.ts';

/**
 * A new day from another: its final rig, its cast, and the crew and settings of its header. Packs come off at
 * wrap and mutes are cleared, so nobody wears anything yet. A day after a sample day is a sample too, since
 * its people are made up.
 */
export function carryOver(from: Day, now: Moment): CommandResult {
  const { sample } = from.header;
  return ok([
    {
      kind: 'day-described',
      fields: { ...headAfter(headerNow(from)), date: dateAfter(from, now), ...(sample && { sample }) },
    },
    ...rigOf(from),
    ...castOf(from),
    ...upkeepOf(from),
    ...marksOf(from),
    ...micsAlong(from),
    ...scenesAlong(from),
  ]);
}

/**
 * The header of the next day: production, crew, recorder and settings carry over, and the label counts on;
 * see `nextLabel`. Date and remarks do not.
 */
export function headAfter(header: Header): HeaderFields {
  const { date: _date, sample: _sample, remarks: _remarks, toneRoll: _toneRoll, ...kept } = header;
  return { ...kept, label: nextLabel(kept.label) };
}

/**
 * The header of a new day, from what carries over and what was entered. Another production means another crew
 * and recorder, so then nothing carries over, least of all what nobody sees before it is printed.
 */
export function newDayHead(after: HeaderFields, said: HeaderFields): HeaderFields {
  const fresh = { production: '', label: 'Day 1', timecodeRate: '25' } as const;
  return { ...fresh, ...(isSameProduction(after, said) && after), ...said };
}

/** Whether it continues the day before: no other production was entered. */
export const isSameProduction = (after: HeaderFields, { production }: HeaderFields): boolean =>
  production === undefined || plain(production) === plain(after.production ?? '');

const plain = (text: string): string => text.trim().toLowerCase();

/**
 * The date after the day's, or the phone's if that is later: a day may be started at wrap, past midnight, or
 * after a weekend. An undated day has the date of its first take.
 */
function dateAfter(from: Day, { atMs, zone }: Moment): string {
  const first = from.facts.find(({ id }) => id === from.takeOrder[0]);
  const after = nextDate(from.header.date || (first ? dateAt(first.at, first.zone) : ''));
  const today = dateAt(atMs, zone);
  return after && after > today ? after : today;
}

/** The rig of a day as drafts: parts, leads, tunings, routes, selectors, gangs; no removed parts. */
export function rigOf(day: Day): Draft[] {
  const { links } = answersNow(day);
  const { rig } = day;
  const parts = [...rig.byId.values()].map(({ id, ...fields }) => ({ part: id, fields }));
  const leads = leadsInRig(day);
  const rolling = rollingNow(day);
  const tunings = rig.channels.map(({ id }) => ({
    channel: id,
    transmitter: ifInRig(day, tunedTo(links, id)?.value),
  }));
  const routes = rig.inputs.map(({ id }) => ({
    input: id,
    tracks: (sentTo(links, id)?.value ?? []).filter((track) => ifInRig(day, track)),
  }));
  const thrown = rig.selectors.filter(({ id }) => thrownTo(links, id)?.value === 'b').map(({ id }) => id);
  const gangs = rig.tracks.flatMap(({ id }) =>
    gangsOn(links, id)
      .map((gang) => ({ track: id, sources: gang.sources.filter((source) => ifASource(day, source)) }))
      .filter(({ sources }) => sources.length > 1),
  );
  const drafts: (Draft | false)[] = [
    parts.length > 0 && { kind: 'rig-laid', parts },
    leads.length > 0 && { kind: 'leads-plugged', leads },
    tunings.length > 0 && { kind: 'channels-tuned', tunings },
    routes.length > 0 && { kind: 'inputs-sent', routes },
    thrown.length > 0 && { kind: 'selectors-thrown', selectors: thrown, position: 'b' },
    rolling.some(({ id }) => id !== FIRST_RECORDER) && {
      kind: 'recorders-rolling',
      recorders: rolling.map(({ id }) => id),
    },
    ...gangs.map((gang): Draft => ({ kind: 'gang-declared', ...gang })),
  ];
  return drafts.filter((draft) => draft !== false);
}

const castOf = (day: Day): Draft[] =>
  [...day.voices.values()]
    .filter(({ struck }) => !struck)
    // Times are of the call sheet of that day.
    .map(({ id, pickUp: _pickUp, onSet: _onSet, ...fields }) => ({
      kind: 'voice-described',
      voice: id,
      fields,
    }));
