import { carryOver } from '../../src/commands/day/start-day.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { inputsToOffer } from '../../src/day/answers/inputs-to-offer.ts';
import { packsToOffer } from '../../src/day/answers/pack-offers.ts';
import { leadsOf } from '../../src/day/chain/leads.ts';
import type { Day } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { checkPlan, dayPlan } from '../../src/radio/day/day-plan.ts';
import { groupsOf, neighbourhoodOf, rangesFor } from '../../src/radio/day/day-ranges.ts';
import { cardsOf, formatOf } from '../../src/upkeep/due/day-cards.ts';
import { upkeepAt } from '../../src/upkeep/due/day-due.ts';
import { leadsOfDay } from '../../src/upkeep/wiring/day-wiring.ts';
import { wiringSheet } from '../../src/upkeep/wiring/wiring-sheet.ts';

/**
 * All that a day answers at a moment, with every id in it written as what it names, and without the facts behind it:
 * two days that answer alike give the same, whatever their ids.
 */
export function everyAnswer(day: Day, nowMs: number): Record<string, unknown> {
  const { rig } = day;
  const { inputs, tracks, voices, summary, links } = answersNow(day);
  const everybody = new Set([...day.voices.keys()]);
  const performer = [...day.voices.values()].find(({ kind }) => kind === 'performer')!;
  const answers = {
    parts: [...rig.byId.values()].sort((a, b) => (a.type + a.name < b.type + b.name ? -1 : 1)),
    inputs,
    tracks,
    voices,
    summary,
    offers: [
      inputsToOffer(answersNow(day)).map(({ input }) => input.id),
      packsToOffer(rig, answersNow(day), performer.id),
    ],
    conflicts: conflictsOf(day),
    radio: [dayPlan(day), checkPlan(dayPlan(day)).result, groupsOf(day), neighbourhoodOf(day) ?? null],
    ranges: rig.transmitters.map(({ name }) => rangesFor(day, name)),
    upkeep: upkeepAt(day, nowMs),
    cards: [cardsOf(day, nowMs), formatOf(day)],
    plan: problemOf(day, everybody),
    tomorrow: carryOver(day, { atMs: nowMs, zone: 0 }),
  };
  const names = new Map([...rig.byId.values()].map(({ id, type, name }) => [id, `${type} ${name}`]));
  const ends = (id: string | null): string => (id === null ? 'nothing' : (names.get(id) ?? id));
  for (const { id, link } of leadsOf(rig, links)) {
    if (link.value.from !== null) names.set(id, `lead from ${ends(link.value.from)}`);
  }
  // A boom that is not plugged has no lead yet; the plan calls the one it would need after the boom, and not by an id that
  // a lead of a rig before had.
  for (const { id } of day.voices.values())
    for (const lead of [`lead-${id}`, `lead2-${id}`]) if (!names.has(lead)) names.set(lead, `lead of ${id}`);
  // The sheet in the lid is all names already.
  return { ...(named(answers, names) as object), wiring: wiringSheet(leadsOfDay(day)) };
}

/** Fields that hold a word, which may be spelled as some id is. */
const WORDS = new Set(['name', 'inputKind', 'outputKind', 'place', 'module', 'positions', 'type', 'kind']);
/** Fields that say by which facts an answer holds. */
const BECAUSE = new Set(['because', 'by']);

function named(value: unknown, names: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return names.get(value) ?? pathNamed(value, names);
  if (Array.isArray(value)) return value.map((one) => named(one, names));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => !BECAUSE.has(key))
      .map(([key, inner]) => [key, WORDS.has(key) ? inner : named(inner, names)]),
  );
}

/** The plan calls a path by a list of ids. */
const pathNamed = (text: string, names: ReadonlyMap<string, string>): string =>
  text.startsWith('["') ? JSON.stringify(named(JSON.parse(text), names)) : text;
