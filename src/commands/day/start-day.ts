import { answersNow } from '../../day/answers/answers.ts';
import { gangsOn } from '../../day/chain/gang-links.ts';
import { sentTo, thrownTo, tunedTo } from '../../day/chain/links.ts';
import type { Day, Header } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { HeaderFields } from '../../facts/kinds/day-described.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult, Moment } from '../command.ts';
import { ifASource, ifInRig, leadsInRig } from '../rig/not-struck.ts';
import { marksOf, upkeepOf } from './carried-along.ts';
import { dateAt, nextDate, nextLabel } from './day-after.ts';

/**
 * A new day from another: its rig as it stands at the end, its cast, and the crew and settings of its head. Packs
 * come off at wrap and mutes go, so nobody wears anything yet. What follows a sample day is one too: its people are
 * made up as well.
 */
export function carryOver(from: Day, now: Moment): CommandResult {
  const { sample } = from.header;
  return ok([
    {
      kind: 'day-described',
      fields: { ...headAfter(from.header), date: dateAfter(from, now), ...(sample && { sample }) },
    },
    ...rigOf(from),
    ...castOf(from),
    ...upkeepOf(from),
    ...marksOf(from),
  ]);
}

/**
 * The head of the day after one: production, crew, recorder and settings go on, and the label counts on; see `nextLabel`.
 * Date and remarks are the day's own.
 */
export function headAfter(header: Header): HeaderFields {
  const { date: _date, sample: _sample, remarks: _remarks, ...kept } = header;
  return { ...kept, label: nextLabel(kept.label) };
}

/**
 * The head of a new day, out of what goes on from the day before and what was said of this one. Another production has
 * another crew and another recorder, so nothing goes on into it: least of all what nobody sees before it is printed.
 */
export function newDayHead(after: HeaderFields, said: HeaderFields): HeaderFields {
  const fresh = { production: '', label: 'Day 1', timecodeRate: '25' } as const;
  return { ...fresh, ...(isSameProduction(after, said) && after), ...said };
}

/** Whether the day before goes on: nothing else was said of the production. */
export const isSameProduction = (after: HeaderFields, { production }: HeaderFields): boolean =>
  production === undefined || plain(production) === plain(after.production ?? '');

const plain = (text: string): string => text.trim().toLowerCase();

/**
 * The date after that of the day, or the phone's where that is later: a day is started at wrap, past midnight, or after
 * a weekend. A day that was given no date has that of its first take.
 */
function dateAfter(from: Day, { atMs, zone }: Moment): string {
  const first = from.facts.find(({ id }) => id === from.takeOrder[0]);
  const after = nextDate(from.header.date || (first ? dateAt(first.at, first.zone) : ''));
  const today = dateAt(atMs, zone);
  return after && after > today ? after : today;
}

/** The rig of a day as one can say it again: parts, leads, tunings, routes, selectors and gangs, and none with struck parts. */
export function rigOf(day: Day): Draft[] {
  const { links } = answersNow(day);
  const { rig } = day;
  const parts = [...rig.byId.values()].map(({ id, ...fields }) => ({ part: id, fields }));
  const leads = leadsInRig(day);
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
    ...gangs.map((gang): Draft => ({ kind: 'gang-declared', ...gang })),
  ];
  return drafts.filter((draft) => draft !== false);
}

const castOf = (day: Day): Draft[] =>
  [...day.voices.values()]
    .filter(({ struck }) => !struck)
    .map(({ id, ...fields }) => ({ kind: 'voice-described', voice: id, fields }));
