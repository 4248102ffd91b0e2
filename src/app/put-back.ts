import { foldDay } from '../day/fold.ts';
import type { DayId, Envelope } from '../facts/envelope.ts';
import { readFact } from '../facts/fact.ts';
import { mergeFacts } from '../facts/merge-facts.ts';
import { outlineOf, readAll } from './day-store.ts';
import type { Journal } from './ports.ts';

/**
 * Keeps facts of a day that a kill left in the copy alone, whether or not the day is open; gives how many the journal had
 * not. What it has and cannot read is mended. Nothing is put back of facts that contradict what can be read.
 */
export async function putBackFacts(
  journal: Journal,
  day: DayId,
  facts: readonly Envelope[],
): Promise<number> {
  const [stored, outlines] = await Promise.all([journal.read(day), journal.days()]);
  const readable = stored.filter((raw): raw is Envelope => readFact(raw).ok);
  const merged = mergeFacts(
    readable,
    facts.filter((fact) => readFact(fact).ok),
  );
  if (!merged.ok || merged.value.fresh.length === 0) return 0;
  const { fresh } = merged.value;
  const whole = foldDay(day, readAll([...readable, ...fresh]).facts);
  const { copiedAt, copiedFacts } = outlines.find(({ id }) => id === day) ?? {};
  await journal.append(fresh, outlineOf(whole, { at: copiedAt, facts: copiedFacts }));
  return fresh.length;
}
