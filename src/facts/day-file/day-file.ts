import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import type { DayId, Envelope } from '../kinds/envelope.ts';
import { byId } from '../merge-facts.ts';
import { storedForm } from '../stored.ts';
import { type DayFile, dayFileOf, gather } from './day-file-facts.ts';
import {
  checkOf,
  DAY_FILE_VERSION,
  type FileLine,
  type Head,
  linesOf,
  readEnd,
  readHead,
} from './day-file-lines.ts';
import { entryCheck } from './entry-checks.ts';

/**
 * The day as text to share as a `.txt`: a head line, one fact per line, and a last line with their number and
 * a check, the CRC-32 of all lines before it. `checks`, one per fact, tell changed facts from intact ones in
 * a damaged file. All facts must be of this day. The order of `facts` does not
 * matter. `sender` says who holds the phone that wrote it.
 */
export function writeDayFile(day: DayId, title: string, facts: readonly Envelope[], sender = ''): string {
  const said = facts
    .map(storedForm)
    .sort(byId)
    .map((fact) => JSON.stringify(fact));
  const checks = said.map(entryCheck).join('');
  const head = JSON.stringify({
    rollbook: 'day-file',
    version: DAY_FILE_VERSION,
    day,
    title: title.slice(0, 200),
    ...(sender && { sender: sender.slice(0, 200) }),
    facts: facts.length,
    checks,
  });
  const lines = [head, ...said];
  const end = JSON.stringify({ end: facts.length, check: checkOf(lines), checks });
  return `${[...lines, end].join('\n')}\n`;
}

/**
 * Reads a whole day file or fails. Problems name the line: `day-file-` `empty`, `too-large`,
 * `too-many-facts`, `not-json`, `other-kind`, `newer`, `head-damaged`, `truncated`, `goes-on`, `count-wrong`,
 * `check-wrong`; `line-` `not-json`, `too-long`, `too-deep`; `fact-damaged`, `fact-of-another-day`,
 * `counter-beyond-limit`, `fact-id-twice`.
 */
export function readDayFile(text: string): Result<DayFile> {
  const lines = linesOf(text);
  if (!lines.ok) return lines;
  const [first, ...rest] = lines.value;
  const head = readHead(first!);
  if (!head.ok) return head;
  const last = rest.pop() ?? first!;
  const end = readEnd(last);
  if (!end || end.end !== rest.length || head.value.facts !== rest.length)
    return fail(wrongLength(head.value, rest, last));
  const gathered = gather(rest, head.value.day);
  const [problem] = gathered.problems;
  if (problem) return fail(problem);
  const check = checkOf([first!, ...rest].map((line) => line.text));
  if (check !== end.check || end.checks !== head.value.checks)
    return fail({ code: 'day-file-check-wrong', line: last.number, expected: end.check, found: check });
  return ok(dayFileOf(head.value, gathered));
}

function wrongLength(head: Head, rest: readonly FileLine[], last: FileLine): Problem {
  const early = rest.find((line) => readEnd(line));
  if (early) return { code: 'day-file-goes-on', line: early.number + 1 };
  const counts = { line: last.number, expected: head.facts, found: rest.length };
  return { code: readEnd(last) ? 'day-file-count-wrong' : 'day-file-truncated', ...counts };
}
