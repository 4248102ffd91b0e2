import { foldDay } from '../day/fold/fold.ts';
import type { Day } from '../day/model.ts';
import { daysBefore } from '../day/season/same-production.ts';
import { type DayKnown, knownOfDay, type Season, seasonOf } from '../day/season/season.ts';
import type { DayOutline, Journal } from './ports.ts';
import { readAll } from './read-stored.ts';

export {
  type KnownMic,
  type KnownPerformer,
  knownBefore,
  type Season,
} from '../day/season/season.ts';

interface Read {
  readonly facts: number;
  readonly known: DayKnown;
}

/** What was read of a day holds until it has other facts. */
const readOf = new WeakMap<Journal, Map<string, Read>>();

/** What the earlier days of its production, as they are on this phone, know of cast and mics. */
export async function seasonBefore(journal: Journal, day: Day): Promise<Season> {
  const outlines = await journal.days();
  const reads = readOf.get(journal) ?? new Map<string, Read>();
  readOf.set(journal, reads);
  const known: DayKnown[] = [];
  for (const outline of daysBefore(outlines, { ...day.header, id: day.id, lastAt: day.lastAt }))
    known.push(await knownOf(journal, outline, reads));
  return seasonOf(known);
}

async function knownOf(
  journal: Journal,
  { id, facts }: DayOutline,
  reads: Map<string, Read>,
): Promise<DayKnown> {
  const before = reads.get(id);
  if (before?.facts === facts) return before.known;
  const known = knownOfDay(foldDay(id, readAll(await journal.read(id)).facts));
  reads.set(id, { facts, known });
  // So that a tap need not wait for a whole season.
  await new Promise((done) => setTimeout(done));
  return known;
}
