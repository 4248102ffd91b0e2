import { checksIn, entryCheck, NO_CHECK } from '../facts/day-file/entry-checks.ts';
import { type DayId, type Envelope, isEnvelope } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';

/**
 * The line of each day for the facts of one action: a JSON array between line feeds, so that a torn line
 * before it does not spoil it. After the facts comes a string with a check of each; versions without checks
 * ignore it. Facts that may be damaged have no check.
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

/** The copied facts of a day, each id once. */
export interface CopiedFacts {
  /** They match their checks. */
  readonly whole: readonly Envelope[];
  /** They have no check, and no checked fact has their id. */
  readonly unchecked: readonly Envelope[];
  /** Ids of facts that fail their checks, as far as the ids can be trusted. */
  readonly changed: readonly FactId[];
}

/** Skips torn lines and anything that is not a fact; the first of two under one id counts. */
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
    // An unchanged fact serialises to the text it was read from.
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
