import { foldDay } from '../day/fold.ts';
import { compareStored } from '../facts/compare-stored.ts';
import type { DayId, Envelope } from '../facts/envelope.ts';
import { isReadable } from '../facts/fact.ts';
import { mergeFacts } from '../facts/merge-facts.ts';
import { outlineOf, readAll } from './day-store.ts';
import type { Journal } from './ports.ts';

/** The copies beside the database, as somebody sees them who makes both say the same. */
export interface Copies {
  /** The days that they hold, the one written last first. */
  days(): Promise<DayId[]>;
  /** Writes into the copies what only the database has of a day, and gives what only they have. Never rejects. */
  settle(day: DayId): Promise<readonly Envelope[]>;
  /** Tries again to remove what was erased and could not be removed. */
  finishForgetting(): Promise<void>;
}

/** How many facts the journal had not, and how many of those were seen in it afterwards, looked at one by one. */
export interface PutBack {
  readonly fresh: number;
  readonly checked: number;
}

/**
 * Makes the copies and the journal say the same of these days, one after the other, and gives those that something came
 * back to. `journal` is the database alone: what comes from the copies need not be copied again.
 */
export async function* settleDays(
  journal: Journal,
  copies: Copies,
  days: readonly DayId[],
): AsyncGenerator<readonly [DayId, PutBack]> {
  for (const day of days) {
    const facts = await copies.settle(day);
    if (facts.length === 0) continue;
    // A day for which there is no room now is come upon again at the next start.
    const back = await putBackFacts(journal, day, facts).catch(() => ({ fresh: facts.length, checked: 0 }));
    if (back.fresh > 0) yield [day, back];
  }
}

/**
 * Keeps facts of a day that were left in the copy alone, whether or not the day is open. What the journal has and cannot
 * read is mended. Nothing is put back of facts that contradict what can be read.
 */
export async function putBackFacts(
  journal: Journal,
  day: DayId,
  facts: readonly Envelope[],
): Promise<PutBack> {
  const [stored, outlines] = await Promise.all([journal.read(day), journal.days()]);
  const readable = stored.filter(isReadable);
  const merged = mergeFacts(readable, facts.filter(isReadable));
  if (!merged.ok || merged.value.fresh.length === 0) return { fresh: 0, checked: 0 };
  const { fresh } = merged.value;
  const whole = foldDay(day, readAll([...readable, ...fresh]).facts);
  const { copiedAt, copiedFacts } = outlines.find(({ id }) => id === day) ?? {};
  await journal.append(fresh, outlineOf(whole, { at: copiedAt, facts: copiedFacts }));
  const { missing } = compareStored(fresh, await journal.read(day));
  return { fresh: fresh.length, checked: fresh.length - missing.length };
}
