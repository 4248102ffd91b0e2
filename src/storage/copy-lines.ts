import { checksIn, entryCheck, NO_CHECK } from '../facts/day-file/entry-checks.ts';
import { type DayId, type Envelope, isEnvelope } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';

/**
 * The line of each day among facts of one action: a JSON array, ended by a line feed, and begun by one too, so that a
 * line that was torn before it stays alone. Behind the facts stands a text with a check of each; an app from before the
 * checks passes over it. Facts of which nobody knows whether they are whole have none.
 */
export function linesOf(
  facts: readonly Envelope[],
  unsure: ReadonlySet<FactId> = new Set(),
): [day: DayId, line: string][] {
  const byDay = new Map<DayId, Envelope[]>();
  for (const fact of facts) byDay.set(fact.day, [...(byDay.get(fact.day) ?? []), fact]);
  return [...byDay].map(([day, own]) => {
    const said = own.map((fact) => JSON.stringify(fact));
    const checks = said.map((json, at) => (unsure.has(own[at]!.id) ? NO_CHECK : entryCheck(json)));
    return [day, `\n[${[...said, JSON.stringify(checks.join(''))].join(',')}]\n`];
  });
}

/** What stands in the copies of a day, each id once. */
export interface CopiedFacts {
  /** As they were said: they fit their checks. */
  readonly whole: readonly Envelope[];
  /** Without a check, and there is no whole one of the same id. */
  readonly unchecked: readonly Envelope[];
  /** The ids of those that do not fit their checks, as far as the ids can be believed. */
  readonly changed: readonly FactId[];
}

/** Reads such lines. What is torn or no fact is left out; of two under one id the first counts. */
export function readCopies(text: string): CopiedFacts {
  const found = { whole: new Map<FactId, Envelope>(), unchecked: new Map<FactId, Envelope>() };
  const changed = new Set<FactId>();
  for (const line of text.split('\n')) {
    for (const { fact, state } of readLine(line)) {
      if (state === 'changed') changed.add(fact.id);
      else if (!found[state].has(fact.id)) found[state].set(fact.id, fact);
    }
  }
  for (const id of found.whole.keys()) {
    found.unchecked.delete(id);
    changed.delete(id);
  }
  return {
    whole: [...found.whole.values()],
    unchecked: [...found.unchecked.values()],
    changed: [...changed],
  };
}

interface Copied {
  readonly fact: Envelope;
  readonly state: 'whole' | 'unchecked' | 'changed';
}

function readLine(line: string): Copied[] {
  const said = arrayOn(line);
  const written = said.at(-1);
  const checks = typeof written === 'string' ? checksIn(written) : [];
  return said.flatMap((fact, at): Copied[] => {
    if (!isEnvelope(fact)) return [];
    const check = checks[at] ?? NO_CHECK;
    if (check === NO_CHECK) return [{ fact, state: 'unchecked' }];
    // Written again as JSON, a fact that was not changed is the text it was read from.
    return [{ fact, state: check === entryCheck(JSON.stringify(fact)) ? 'whole' : 'changed' }];
  });
}

function arrayOn(line: string): unknown[] {
  try {
    const said: unknown = JSON.parse(line);
    return Array.isArray(said) ? said : [];
  } catch {
    return [];
  }
}
