import { foldDay } from '../day/fold.ts';
import type { DayId, Envelope } from '../facts/envelope.ts';
import { readFact } from '../facts/fact.ts';
import { mergeFacts } from '../facts/merge-facts.ts';
import { isSameFact } from '../facts/stored.ts';
import { outlineOf, readAll } from './day-store.ts';
import type { Journal } from './ports.ts';

/** The copies beside the database, as somebody sees them who makes both say the same. */
export interface Copies {
  /** The days that they hold, the one written last first. Tries again before that to remove what was erased. */
  days(): Promise<DayId[]>;
  /** Writes into the copies what only the database has of a day, and gives what only they have. Never rejects. */
  settle(day: DayId): Promise<readonly Envelope[]>;
}

/** How many facts the journal had not, and how many of those were seen in it afterwards, looked at one by one. */
export interface PutBack {
  readonly fresh: number;
  readonly checked: number;
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
  const readable = stored.filter((raw): raw is Envelope => readFact(raw).ok);
  const merged = mergeFacts(
    readable,
    facts.filter((fact) => readFact(fact).ok),
  );
  if (!merged.ok || merged.value.fresh.length === 0) return { fresh: 0, checked: 0 };
  const { fresh } = merged.value;
  const whole = foldDay(day, readAll([...readable, ...fresh]).facts);
  const { copiedAt, copiedFacts } = outlines.find(({ id }) => id === day) ?? {};
  await journal.append(fresh, outlineOf(whole, { at: copiedAt, facts: copiedFacts }));
  const there = new Map((await journal.read(day)).map((raw) => [(raw as Envelope).id, raw as Envelope]));
  const isThere = (fact: Envelope): boolean => {
    const same = there.get(fact.id);
    return same !== undefined && isSameFact(same, fact);
  };
  return { fresh: fresh.length, checked: fresh.filter(isThere).length };
}
