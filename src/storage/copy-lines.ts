import { type DayId, type Envelope, envelope } from '../facts/envelope.ts';
import { isSameFact } from '../facts/stored.ts';

/** The line of each day among facts of one action: a JSON array, ended by a line feed, and begun by one too, so that a
 * line that was torn before it stays alone. */
export function linesOf(facts: readonly Envelope[]): [day: DayId, line: string][] {
  const byDay = new Map<DayId, Envelope[]>();
  for (const fact of facts) byDay.set(fact.day, [...(byDay.get(fact.day) ?? []), fact]);
  return [...byDay].map(([day, own]) => [day, `\n${JSON.stringify(own)}\n`]);
}

/** The facts of such lines, each id once, the first one said. What is torn or no fact is left out. */
export function readLines(text: string): Envelope[] {
  const found = new Map<string, Envelope>();
  for (const line of text.split('\n')) {
    if (line === '') continue;
    for (const fact of readLine(line)) if (!found.has(fact.id)) found.set(fact.id, fact);
  }
  return [...found.values()];
}

export interface Compared {
  /** Facts that the database holds and the copies do not. */
  readonly onlyStored: readonly Envelope[];
  /** Facts that the copies hold and the database does not, or not as they were said. */
  readonly onlyCopied: readonly Envelope[];
}

/** What each of the two lacks of a day. `stored` is as it came out of the database, where anything may be damaged. */
export function compare(copied: readonly Envelope[], stored: readonly unknown[]): Compared {
  const there = new Map(stored.filter(isFact).map((fact) => [fact.id, fact]));
  const onlyCopied = copied.filter((fact) => {
    const same = there.get(fact.id);
    return !same || !isSameFact(same, fact);
  });
  for (const { id } of copied) there.delete(id);
  return { onlyStored: [...there.values()], onlyCopied };
}

const isFact = (raw: unknown): raw is Envelope => envelope.safeParse(raw).success;

function readLine(line: string): Envelope[] {
  try {
    const raw: unknown = JSON.parse(line);
    return Array.isArray(raw) ? raw.filter(isFact) : [];
  } catch {
    return [];
  }
}
