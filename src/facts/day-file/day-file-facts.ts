import { counterOf, type FactId, HIGHEST_COUNTER, isFactId } from '../../shared/ids.ts';
import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { type Fact, isKnown, readFact, type UnknownFact } from '../fact.ts';
import type { DayId, Envelope } from '../kinds/envelope.ts';
import { byId } from '../merge-facts.ts';
import { isSameFact, storedForm } from '../stored.ts';
import { type FileLine, parseLine, shown } from './day-file-lines.ts';
import { entryCheck } from './entry-checks.ts';

export type DayFileWarning =
  | { readonly code: 'facts-repeated'; readonly count: number }
  | { readonly code: 'facts-of-newer-version'; readonly count: number; readonly kinds: readonly string[] };

/** A day as a file holds it; both lists in order of ids, each fact once. */
export interface DayFile {
  readonly day: DayId;
  readonly title: string;
  /** Who held the phone that wrote the file. */
  readonly sender?: string;
  /** Lifted to this version, for folding. */
  readonly facts: readonly (Fact | UnknownFact)[];
  /** The same facts as they are in the file, for storing, merging and exporting. */
  readonly stored: readonly Envelope[];
  /** Oddities that do no harm. */
  readonly warnings: readonly DayFileWarning[];
  /** The file is damaged and has no checks, so any of its facts may be wrong. */
  readonly unchecked?: true;
}

interface Kept {
  readonly line: number;
  readonly stored: Envelope;
  readonly fact: Fact | UnknownFact;
}

export interface Gathered {
  readonly kept: ReadonlyMap<FactId, Kept>;
  readonly repeated: number;
  readonly damaged: number;
  readonly problems: readonly Problem[];
}

/**
 * The facts on these lines that belong to the day, each once, and what is wrong with the others. If there are
 * `checks`, a line that matches none was changed.
 */
export function gather(
  lines: readonly FileLine[],
  day: DayId,
  checks: ReadonlySet<string> | null = null,
): Gathered {
  const kept = new Map<FactId, Kept>();
  const disputed = new Set<FactId>();
  const problems: Problem[] = [];
  let repeated = 0;
  for (const line of lines) {
    const read = readFactLine(line, day, checks);
    if (!read.ok) {
      problems.push(read.problem);
      continue;
    }
    const { id } = read.value.stored;
    const before = kept.get(id);
    if (!before) kept.set(id, read.value);
    else if (isSameFact(before.stored, read.value.stored)) repeated += 1;
    else {
      disputed.add(id);
      problems.push({ code: 'fact-id-twice', line: line.number, first: before.line, id });
    }
  }
  for (const id of disputed) kept.delete(id);
  return { kept, repeated, damaged: problems.length + disputed.size, problems };
}

function readFactLine(line: FileLine, day: DayId, checks: ReadonlySet<string> | null): Result<Kept> {
  const parsed = parseLine(line);
  if (!parsed.ok) return parsed;
  const raw = parsed.value;
  const at = { line: line.number, id: shown(raw.id) };
  if (isBeyondLimit(raw.id)) return fail({ code: 'counter-beyond-limit', ...at, limit: HIGHEST_COUNTER });
  const read = readFact(raw);
  if (!read.ok) return fail({ ...read.problem, ...at });
  if (read.value.day !== day)
    return fail({ code: 'fact-of-another-day', ...at, day: read.value.day, expected: day });
  if (checks && !checks.has(entryCheck(line.text))) return fail({ code: 'fact-changed', ...at });
  return ok({ line: line.number, stored: storedForm(raw as Envelope), fact: read.value });
}

/** Whether this would be a valid id if its counter were lower. */
const isBeyondLimit = (id: unknown): boolean =>
  typeof id === 'string' && counterOf(id) > HIGHEST_COUNTER && isFactId(`000000${id.slice(6)}`);

export function dayFileOf(
  { day, title, sender }: Pick<DayFile, 'day' | 'title'> & { readonly sender?: string | undefined },
  { kept, repeated }: Gathered,
): DayFile {
  const sorted = [...kept.values()].sort((one, other) => byId(one.stored, other.stored));
  const facts = sorted.map(({ fact }) => fact);
  const newer = facts.filter((fact) => !isKnown(fact));
  const kinds = [...new Set(newer.map(({ kind }) => kind))].sort().slice(0, 20);
  const warnings: DayFileWarning[] = [];
  if (repeated > 0) warnings.push({ code: 'facts-repeated', count: repeated });
  if (newer.length > 0) warnings.push({ code: 'facts-of-newer-version', count: newer.length, kinds });
  return {
    day,
    title,
    ...(sender && { sender }),
    facts,
    stored: sorted.map(({ stored }) => stored),
    warnings,
  };
}
