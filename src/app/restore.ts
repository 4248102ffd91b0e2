import { foldDay } from '../day/fold/fold.ts';
import { isReadable } from '../facts/fact.ts';
import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import { mergeFacts } from '../facts/merge-facts.ts';
import { compareStored } from '../facts/stored.ts';
import { outlineOf } from './day-outline.ts';
import type { Journal } from './ports.ts';
import { readAll } from './read-stored.ts';

/** What only the copies have of a day. */
export interface OnlyCopied {
  /** Passed their checks, so what the journal has under their ids is damaged. */
  readonly whole: readonly Envelope[];
  /** Written without a check: a readable fact in the journal wins. */
  readonly unchecked: readonly Envelope[];
  /** How many fail their checks and exist nowhere else: these are lost. */
  readonly damaged: number;
}

/** The copies beside the database, as seen by the code that reconciles the two. */
export interface Copies {
  /** The days they hold, most recently written first. */
  days(): Promise<DayId[]>;
  /** Copies what only the database has of a day and returns what only the copies have. Never rejects. */
  align(day: DayId): Promise<OnlyCopied>;
  /** Retries removing days that were erased but could not be deleted. */
  finishForgetting(): Promise<void>;
}

/** How many facts the journal lacked, and how many of those were then found in it, checked one by one. */
export interface Restored {
  readonly fresh: number;
  readonly checked: number;
  /** How many of them were copied without a check, so nobody can tell whether they are intact. */
  readonly unchecked?: number;
  /** How many more were damaged in the copy: these are lost. */
  readonly damaged?: number;
}

/**
 * Reconciles the copies with the journal, day by day, and yields the days that regained or lost facts.
 * `journal` is the database alone: what comes from the copies need not be copied again.
 */
export async function* alignDays(
  journal: Journal,
  copies: Copies,
  days: readonly DayId[],
): AsyncGenerator<readonly [DayId, Restored]> {
  for (const day of days) {
    const { whole, unchecked, damaged } = await copies.align(day);
    const back = await restoreAll(journal, day, whole, unchecked);
    if (back.fresh + damaged > 0) yield [day, { ...back, damaged }];
  }
}

async function restoreAll(
  journal: Journal,
  day: DayId,
  whole: readonly Envelope[],
  unchecked: readonly Envelope[],
): Promise<Restored> {
  // If there is no room for a day now, the next start tries again.
  const noRoom = (facts: readonly Envelope[]) => () => ({ fresh: facts.length, checked: 0 });
  const one = await restoreFacts(journal, day, whole, 'whole').catch(noRoom(whole));
  const other = await restoreFacts(journal, day, unchecked, 'unchecked').catch(noRoom(unchecked));
  return {
    fresh: one.fresh + other.fresh,
    checked: one.checked + other.checked,
    unchecked: other.fresh,
  };
}

/**
 * Restores facts of a day that only the copy had, whether or not the day is open. Intact ones repair
 * unreadable or differing facts in the journal. Unchecked ones are restored only if none of them contradicts
 * a readable fact, and count as unsure.
 */
export async function restoreFacts(
  journal: Journal,
  day: DayId,
  facts: readonly Envelope[],
  state: 'whole' | 'unchecked' = 'unchecked',
): Promise<Restored> {
  const [stored, outlines] = await Promise.all([journal.read(day), journal.days()]);
  const readable = stored.filter(isReadable);
  const fresh = freshOf(readable, facts.filter(isReadable), state);
  if (fresh.length === 0) return { fresh: 0, checked: 0 };
  const ids = new Set(fresh.map(({ id }) => id));
  const others = readable.filter(({ id }) => !ids.has(id));
  const { copiedAt, copiedFacts, unsure = [] } = outlines.find(({ id }) => id === day) ?? {};
  const outline = outlineOf(foldDay(day, readAll([...others, ...fresh]).facts), {
    at: copiedAt,
    facts: copiedFacts,
    unsure: [...unsure.filter((id) => !ids.has(id)), ...(state === 'whole' ? [] : ids)],
  });
  await (state === 'whole' ? journal.mend(fresh, outline) : journal.append(fresh, outline));
  const { missing } = compareStored(fresh, await journal.read(day));
  return { fresh: fresh.length, checked: fresh.length - missing.length };
}

function freshOf(
  readable: readonly Envelope[],
  came: readonly Envelope[],
  state: 'whole' | 'unchecked',
): readonly Envelope[] {
  if (state === 'whole') return compareStored(came, readable).missing;
  const merged = mergeFacts(readable, came);
  return merged.ok ? merged.value.fresh : [];
}
