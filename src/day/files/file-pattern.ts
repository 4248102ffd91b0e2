import { fail, ok, type Result } from '../../shared/result.ts';
import type { Take } from '../model.ts';
import { sceneText, slateText } from '../slate.ts';

export const FILE_TOKENS = [
  'scene',
  'slate',
  'take',
  'take:2',
  'take:3',
  'roll',
  'date',
  'count',
  'count:3',
  'kind',
  'track',
  'track:2',
] as const;
export type FileToken = (typeof FILE_TOKENS)[number];

export type Piece = { readonly token: FileToken } | { readonly literal: string };

export type PatternProblem =
  | { readonly code: 'pattern-empty' }
  | { readonly code: 'pattern-brace-open'; readonly at: number }
  | { readonly code: 'pattern-token-unknown'; readonly token: string }
  | { readonly code: 'pattern-character-unsafe'; readonly found: string }
  | { readonly code: 'pattern-names-all-alike' };

/**
 * Parses a pattern for file names: text, and tokens in braces from `FILE_TOKENS`. It must contain the take or
 * the count, or all takes would get one name. `checkPattern('{slate}T{take:2}')` is ok; `'{slate}'` fails
 * with `pattern-names-all-alike`.
 */
export function checkPattern(text: string): Result<readonly Piece[], PatternProblem> {
  if (text.trim() === '') return fail({ code: 'pattern-empty' });
  const pieces: Piece[] = [];
  for (const { 0: found, index } of text.matchAll(/\{[^{}]*\}|[^{}]+|[{}]/g)) {
    if (found === '{' || found === '}') return fail({ code: 'pattern-brace-open', at: index });
    if (found.startsWith('{')) {
      const token = found.slice(1, -1);
      if (!isToken(token)) return fail({ code: 'pattern-token-unknown', token });
      pieces.push({ token });
      continue;
    }
    const unsafe = /[\u0000-\u001f\u007f<>:"/\\|?*]/.exec(found);
    if (unsafe) return fail({ code: 'pattern-character-unsafe', found: unsafe[0] });
    pieces.push({ literal: found });
  }
  const tellsApart = pieces.some((piece) => 'token' in piece && /^(take|count)/.test(piece.token));
  return tellsApart ? ok(pieces) : fail({ code: 'pattern-names-all-alike' });
}

const isToken = (text: string): text is FileToken => (FILE_TOKENS as readonly string[]).includes(text);

export interface NameFacts {
  readonly take: Take;
  readonly roll: string;
  readonly date: string;
  /** Running number of the day's files. */
  readonly count: number;
  /** How many false starts of this slate and number came before. */
  readonly restarts: number;
  /** The track's label; empty for the name that all files of the take share. */
  readonly track: string;
}

/** What stands for the slate of a take that has none. */
export const SERIES_MARK: Partial<Record<Take['kind'], string>> = { wild: 'WT', tone: 'RT' };

/** `'PU'`, `'WT'`, `'FS2'`: what tells a take's name from the plain takes of its slate. */
function kindMark({ take, restarts }: NameFacts): string {
  const kind = take.kind === 'pickup' ? 'PU' : (SERIES_MARK[take.kind] ?? '');
  const again = take.falseStart ? `FS${restarts > 0 ? restarts + 1 : ''}` : '';
  return kind + again;
}

function tokenText(token: FileToken, facts: NameFacts): string {
  const { take } = facts;
  const width = Number(token.split(':')[1] ?? 1);
  switch (token) {
    case 'scene':
      return sceneText(take.slate);
    case 'slate':
      return slateText(take.slate);
    case 'take':
    case 'take:2':
    case 'take:3':
      return String(take.number).padStart(width, '0');
    case 'roll':
      return facts.roll;
    case 'date':
      return facts.date;
    case 'count':
    case 'count:3':
      return String(facts.count).padStart(width, '0');
    case 'kind':
      return kindMark(facts);
    case 'track':
    case 'track:2':
      return /^\d+$/.test(facts.track) ? facts.track.padStart(width, '0') : facts.track;
  }
}

/**
 * Wild tracks and room tones have their own numbering, so in a pattern without `{kind}` the series replaces
 * the slate, and the text between slate and take is dropped: `'{slate}T{take:2}'` gives `'WT02'`.
 */
function inSeries(pieces: readonly Piece[], series: string): Piece[] {
  const at = (name: RegExp) => pieces.findIndex((piece) => 'token' in piece && name.test(piece.token));
  const take = at(/^take/);
  const slate = at(/^slate$/);
  if (take < 0) return slate < 0 ? [...pieces] : pieces.with(slate, { literal: series });
  if (slate < 0 || slate > take) {
    return [...pieces.slice(0, take), { literal: series }, ...pieces.slice(take)];
  }
  return [...pieces.slice(0, slate), { literal: series }, ...pieces.slice(take)];
}

/** An empty token removes the separator before it, or after it at the start. */
function joined(pieces: readonly Piece[], facts: NameFacts): string {
  let text = '';
  let starting = false;
  for (const piece of pieces) {
    const said = 'token' in piece ? tokenText(piece.token, facts) : piece.literal;
    if (said === '') {
      starting ||= text === '';
      text = text.replace(/[_\-. ]+$/, '');
    } else {
      text += starting ? said.replace(/^[_\-. ]+/, '') : said;
      starting &&= text === '';
    }
  }
  return text;
}

/** A file name without its extension, from the pattern: `'24BT3'`. */
export function stemOf(pieces: readonly Piece[], facts: NameFacts): string {
  const says = (name: string) => pieces.some((piece) => 'token' in piece && piece.token.startsWith(name));
  const series = SERIES_MARK[facts.take.kind];
  const shaped = series && !says('kind') ? inSeries(pieces, series) : pieces;
  const text = joined(shaped, facts);
  // The running number already makes every name unique.
  if (says('kind') || says('count')) return text;
  return text + kindMark(series ? { ...facts, take: { ...facts.take, kind: 'take' } } : facts);
}
