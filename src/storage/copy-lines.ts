import { type DayId, type Envelope, isEnvelope } from '../facts/envelope.ts';

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

function readLine(line: string): Envelope[] {
  try {
    const raw: unknown = JSON.parse(line);
    return Array.isArray(raw) ? raw.filter(isEnvelope) : [];
  } catch {
    return [];
  }
}
