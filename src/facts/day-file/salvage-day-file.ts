import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import type { DayId } from '../kinds/envelope.ts';
import { type DayFile, dayFileOf, gather } from './day-file-facts.ts';
import { entryChecks, type FileLine, linesOf, parseLine, readEnd, readHead } from './day-file-lines.ts';

/** What could be read of a damaged day file. */
export interface Salvage extends DayFile {
  /** How many lines hold something that could not be kept. */
  readonly damaged: number;
  /** How many facts the head announces that were not found, damaged lines too; 0 if unreadable. */
  readonly missing: number;
  /** The first hundred problems, each with its line. */
  readonly problems: readonly Problem[];
}

/**
 * Reads as much of a damaged day file as possible. Leaves out facts that fail their check, since even the id
 * may be wrong, and facts that claim one id with different bodies. Fails like `readDayFile` if the file is of
 * another kind, newer or too large; with `day-file-nothing-readable` if no fact is left.
 */
export function readDayFileLeniently(text: string): Result<Salvage> {
  const lines = linesOf(text);
  if (!lines.ok) return lines;
  const [first, ...rest] = lines.value;
  const head = readHead(first!);
  if (!head.ok && ['day-file-other-kind', 'day-file-newer'].includes(head.problem.code)) return head;
  const ends = rest.filter(readEnd);
  const isEnd = new Set(ends);
  const body = rest.filter((line) => !isEnd.has(line));
  const day = dayOf(body, head.ok ? head.value.day : undefined);
  const checks = entryChecks([first!, ...ends, ...rest.slice(-1)]);
  const gathered = gather(body, day, checks);
  const file = dayFileOf({ title: '', ...(head.ok && head.value), day }, gathered);
  if (file.facts.length === 0)
    return fail({
      code: 'day-file-nothing-readable',
      lines: lines.value.length,
      first: gathered.problems[0],
    });
  const headProblem = head.ok ? [] : [head.problem];
  return ok({
    ...file,
    damaged: gathered.damaged + headProblem.length,
    missing: head.ok ? Math.max(0, head.value.facts - gathered.repeated - file.facts.length) : 0,
    problems: [...headProblem, ...gathered.problems].slice(0, 100),
    ...(checks ? {} : { unchecked: true }),
  });
}

/** The day in the head; if no line belongs to it, as its name was damaged, the day of most lines. */
function dayOf(lines: readonly FileLine[], said: DayId | undefined): DayId {
  const counts = new Map<DayId, number>();
  for (const line of lines) {
    const parsed = parseLine(line);
    if (!parsed.ok || typeof parsed.value.day !== 'string') continue;
    counts.set(parsed.value.day, (counts.get(parsed.value.day) ?? 0) + 1);
  }
  if (said !== undefined && counts.has(said)) return said;
  return [...counts].sort((one, other) => other[1] - one[1])[0]?.[0] ?? said ?? '';
}
