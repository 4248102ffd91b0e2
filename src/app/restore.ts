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
  /** As they were said: what the journal says else under their ids is damaged. */
  readonly whole: readonly Envelope[];
  /** Written without a check: what the journal has and can read stands. */
  readonly unchecked: readonly Envelope[];
  /** How many do not fit their checks, and are nowhere else: they are lost here. */
  readonly damaged: number;
}

/** The copies beside the database, as somebody sees them who makes both say the same. */
export interface Copies {
  /** The days that they hold, the one written last first. */
  days(): Promise<DayId[]>;
  /** Writes into the copies what only the database has of a day, and gives what only they have. Never rejects. */
  align(day: DayId): Promise<OnlyCopied>;
  /** Tries again to remove what was erased and could not be removed. */
  finishForgetting(): Promise<void>;
}

/** How many facts the journal had not, and how many of those were seen in it afterwards, looked at one by one. */
export interface Restored {
  readonly fresh: number;
  readonly checked: number;
  /** How many of them were copied without a check, so that nobody can tell whether they are whole. */
  readonly unchecked?: number;
  /** How many more were damaged in the copy, and are lost here. */
  readonly damaged?: number;
}

/**
 * Makes the copies and the journal say the same of these days, one after the other, and gives those that something came
 * back to or was lost of. `journal` is the database alone: what comes from the copies need not be copied again.
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
  // A day for which there is no room now is come upon again at the next start.
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
 * Keeps facts of a day that were left in the copy alone, whether or not the day is open. What the journal has and cannot
 * read is mended; whole ones mend what says something else as well. Of unchecked ones nothing is put back where one
 * contradicts what can be read, and those that are count as unsure.
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
