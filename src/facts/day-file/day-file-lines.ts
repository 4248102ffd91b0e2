import * as z from 'zod/mini';
import { fail, ok, type Result } from '../../shared/result.ts';
import { idText, shortText, wholeNumber } from '../kinds/envelope.ts';
import { crc32 } from './crc32.ts';
import { checksIn } from './entry-checks.ts';

/**
 * Limits of a day file. `size` is in bytes for the caller that opens the file and in characters here, which
 * are never more; `lineLength` is in characters; `depth` counts nested brackets.
 */
export const DAY_FILE_LIMITS = {
  size: 40_000_000,
  lineLength: 4_000_000,
  facts: 200_000,
  depth: 20,
} as const;
export const DAY_FILE_VERSION = 1;

/** A non-blank line, trimmed; `number` counts from 1. */
export interface FileLine {
  readonly number: number;
  readonly text: string;
}

/**
 * A check of every entry, in order. Both the first and the last line have it, since a truncated file loses
 * the last line and damage may hit the first. Older readers ignore it.
 */
const checks = z.optional(z.string());

const head = z.object({
  rollbook: z.literal('day-file'),
  version: wholeNumber(1, DAY_FILE_VERSION),
  day: idText,
  title: shortText,
  facts: wholeNumber(0, DAY_FILE_LIMITS.facts),
  /** Who sent it; older readers ignore it. */
  sender: z.optional(shortText),
  checks,
});
export type Head = z.infer<typeof head>;

const end = z.object({
  end: wholeNumber(0, DAY_FILE_LIMITS.facts),
  check: z.string().check(z.regex(/^[0-9a-f]{8}$/)),
  checks,
});
export type End = z.infer<typeof end>;

/** The lines of a text. Ignores a byte order mark, line-end styles and blank lines, which mail may add. */
export function linesOf(text: string): Result<FileLine[]> {
  const { size, facts } = DAY_FILE_LIMITS;
  if (text.length > size) return fail({ code: 'day-file-too-large', size: text.length, limit: size });
  const lines: FileLine[] = [];
  let number = 0;
  for (let from = 0; from <= text.length; ) {
    const at = text.indexOf('\n', from);
    const to = at < 0 ? text.length : at;
    number += 1;
    const line = text.slice(from, to).trim();
    if (line) lines.push({ number, text: line });
    if (lines.length > facts + 2 || number > 4 * facts) return tooManyLines(lines[0]);
    from = to + 1;
  }
  return lines.length > 0 ? ok(lines) : fail({ code: 'day-file-empty' });
}

/** With this many lines it is most likely no day file at all, which is the more useful message. */
function tooManyLines(first: FileLine | undefined): Result<never> {
  const head = first ? readHead(first) : null;
  if (head && !head.ok) return head;
  return fail({ code: 'day-file-too-many-facts', limit: DAY_FILE_LIMITS.facts });
}

/** CRC-32 over the UTF-8 of all lines joined by line feeds, as eight digits. */
export function checkOf(lines: readonly string[]): string {
  const encoder = new TextEncoder();
  let crc = 0;
  for (const [index, line] of lines.entries()) crc = crc32(encoder.encode(index ? `\n${line}` : line), crc);
  return crc.toString(16).padStart(8, '0');
}

/** The JSON object on a line, or a problem with the line number; never an array or a bare value. */
export function parseLine({ number: line, text }: FileLine): Result<Record<string, unknown>> {
  const { lineLength, depth } = DAY_FILE_LIMITS;
  if (text.length > lineLength)
    return fail({ code: 'line-too-long', line, length: text.length, limit: lineLength });
  if (depthOf(text) > depth) return fail({ code: 'line-too-deep', line, limit: depth });
  try {
    const value: unknown = JSON.parse(text);
    const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isObject ? ok(value as Record<string, unknown>) : fail({ code: 'line-not-json', line });
  } catch {
    return fail({ code: 'line-not-json', line });
  }
}

/** Measured before parsing, because deep nesting may overflow the parser's stack. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const char = text[at]!;
    if (quoted) {
      if (char === '\\') at += 1;
      else if (char === '"') quoted = false;
    } else if (char === '"') quoted = true;
    else if (char === '{' || char === '[') {
      depth += 1;
      deepest = Math.max(deepest, depth);
    } else if (char === '}' || char === ']') depth -= 1;
  }
  return deepest;
}

/** Reads the first line, or says why this version cannot read the file. */
export function readHead(first: FileLine): Result<Head> {
  const line = first.number;
  const parsed = parseLine(first);
  if (!parsed.ok) {
    const cut = first.text.startsWith('{"rollbook":"day-file"');
    return fail({ code: cut ? 'day-file-head-damaged' : 'day-file-not-json', line, where: 'the first line' });
  }
  const { rollbook, version } = parsed.value;
  if (rollbook !== 'day-file') return fail({ code: 'day-file-other-kind', line, found: shown(rollbook) });
  if (typeof version === 'number' && version > DAY_FILE_VERSION)
    return fail({ code: 'day-file-newer', line, version, known: DAY_FILE_VERSION });
  const read = head.safeParse(parsed.value);
  if (read.success) return ok(read.data);
  return fail({ code: 'day-file-head-damaged', line, where: read.error.issues[0]?.path.join('.') ?? '' });
}

/** The last line, if this is one. */
export function readEnd(line: FileLine): End | null {
  if (!line.text.startsWith('{"end":')) return null;
  const parsed = parseLine(line);
  const read = parsed.ok ? end.safeParse(parsed.value) : null;
  return read?.success ? read.data : null;
}

/** The checks of the entries, from lines that may be damaged themselves; null if there are none. */
export function entryChecks(lines: readonly FileLine[]): ReadonlySet<string> | null {
  const written = lines.flatMap(({ text }) => /"checks":"([^"]*)/.exec(text)?.[1] ?? []);
  return written.length > 0 ? new Set(written.flatMap(checksIn)) : null;
}

/** A foreign value, cut short enough for a sentence. */
export const shown = (value: unknown): string => (typeof value === 'string' ? value.slice(0, 80) : '');
