/** What single cells of a scene look like. Abbreviations of call sheets: common practice, no source. */

const PREFIX = String.raw`(?:scenes?|scn|sc|szene|sz|bild|s[eé]quence|s[eé]q|escena|esc|secuencia|sec|scena)\.?\s*(?:no\.?|nr\.?|#)?\s*`;
const PART = String.raw`(?:\s?-?\s?(?:pt|part|teil)\.?\s?(?:\d{1,2}|[A-Z])?)`;
const ONE = String.raw`[A-Z]{0,2}\d{1,4}(?:[./]\d{1,3})?[A-Z]{0,3}${PART}?`;
const NUMBERS = String.raw`${ONE}(?:\s?[-–&+/]\s?${ONE})*`;
const ALONE = new RegExp(String.raw`^(?:${PREFIX}|#\s?)?(${NUMBERS})[.:)]?$`, 'i');
const AT_START = new RegExp(String.raw`^(?:${PREFIX}|#\s?)?(${NUMBERS})(?:[.:)]|\s?[-–—])?\s+(?=\S)`, 'i');

const tidyNumber = (text: string): string =>
  text
    .toUpperCase()
    .replace(/\s+/g, '')
    .replace(/-?(?:PT|PART|TEIL)\.?/g, 'pt')
    .replace(/–/g, '-');

/** `'46 pt. 2'` is `'46pt2'`, `'Sc. a46'` is `'A46'`; empty if the cell is no scene number. */
export const sceneNumberIn = (cell: string): string => tidyNumber(ALONE.exec(cell)?.[1] ?? '');

/** The scene number that a line begins with, and what follows it. */
export function leadingScene(line: string): { number: string; rest: string } | null {
  const found = AT_START.exec(line);
  return found && { number: tidyNumber(found[1]!), rest: line.slice(found[0].length).trim() };
}

const INSIDE = String.raw`(?:int(?:erior|érieur|\.|(?=[\s/,-]|$))|innen|interno|interior)\.?`;
const OUTSIDE = String.raw`(?:ext(?:erior|érieur|\.|(?=[\s/,-]|$))|au(?:ss|ß)en|esterno|exterior)\.?`;
const BOTH = String.raw`(?:${INSIDE}\s?[/&+-]\s?${OUTSIDE}|${OUTSIDE}\s?[/&+-]\s?${INSIDE}|i\s?\/\s?e\b\.?|e\s?\/\s?i\b\.?|i\s?\/\s?a\b\.?|a\s?\/\s?i\b\.?)`;
const IN_OR_OUT = new RegExp(
  String.raw`(?<![\p{L}\d/])(?:(${BOTH})|(${INSIDE})|(${OUTSIDE}))(?!\p{L})[\s:.-]*`,
  'iu',
);
const LETTER: Readonly<Record<string, string>> = { I: 'INT', E: 'EXT', A: 'EXT' };

/** Finds INT or EXT within a text; null if there is none. `rest` is the text without it. */
export function intExtWithin(text: string): { intExt: string; at: number; rest: string } | null {
  const found = IN_OR_OUT.exec(text);
  if (!found) return null;
  const intExt = found[1] ? 'INT/EXT' : found[2] ? 'INT' : 'EXT';
  const rest = `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`.trim();
  return { intExt, at: found.index, rest };
}

/** A cell that says INT or EXT and nothing else; letters alone count too: `'I'` is `'INT'`. */
export function intExtIn(cell: string): string {
  const found = intExtWithin(cell);
  if (found && found.rest === '') return found.intExt;
  return LETTER[cell.toUpperCase().replace('.', '')] ?? '';
}

const TIME_OF_DAY =
  'day|night|dawn|dusk|morning|evening|afternoon|midday|noon|sunset|sunrise|magic hour|continuous|cont\\.?|later|tag|nacht|abend|morgen|dämmerung|jour|nuit|soir|matin|aube|d[ií]a|noche|tarde|amanecer|giorno|notte|sera|alba|dag|natt|kveld|morgon';
const STORY_DAY = String.raw`(?:\s?\(?\d{1,2}\)?)?`;
/** In running text a figure after the time of day is a story day only before a whole count of pages, or at the end. */
const STORY_DAY_WITHIN = String.raw`(?:\s?\(\d{1,2}\)|\s\d{1,2}(?=\s+\d{1,2}\s+[0-7]\/8|\s*$))?`;
const WORDED = `(?:early |late )?(?:${TIME_OF_DAY})${STORY_DAY}`;
const DAY_NIGHT = new RegExp(
  String.raw`^(?:${WORDED}(?:\s?[-/]\s?${WORDED})?|[dntj]${STORY_DAY}|[dt]\s?\/\s?n|j\s?\/\s?n)$`,
  'i',
);
const DAY_NIGHT_WITHIN = new RegExp(
  String.raw`(?:^|[\s.,]*[-–—/.,]\s*|\s)((?:early |late )?(?:${TIME_OF_DAY})${STORY_DAY_WITHIN})(?![\p{L}\d/])`,
  'iu',
);

export const isDayNight = (cell: string): boolean => DAY_NIGHT.test(cell);

/** The first time of day in a text, with what stands before and after it. A story day is no page count. */
export function dayNightWithin(text: string): { before: string; dayNight: string; after: string } | null {
  const worded = new RegExp(DAY_NIGHT_WITHIN.source, 'giu');
  for (const found of text.matchAll(worded)) {
    const end = found.index + found[0].length;
    const before = text.slice(0, found.index).trim();
    // 'DAY ROOM - NIGHT': a word that begins the set is part of its name.
    if (before === '' && /^\s+\p{L}/u.test(text.slice(end)) && dayNightWithin(text.slice(end))) continue;
    return { before, dayNight: found[1]!.trim(), after: text.slice(end).trim() };
  }
  return null;
}

const VULGAR: Readonly<Record<string, string>> = {
  '⅛': '1/8',
  '¼': '2/8',
  '⅜': '3/8',
  '½': '4/8',
  '⅝': '5/8',
  '¾': '6/8',
  '⅞': '7/8',
};
const inEighths = (text: string): string =>
  text.replace(/\s*([⅛¼⅜½⅝¾⅞])/g, (_all, sign: string) => ` ${VULGAR[sign]}`).trim();
const UNIT = String.raw`\s*(?:pgs?\.?|pages?|ths?|seiten?|s\.)?`;
const EIGHTHS = new RegExp(String.raw`^(\d{1,2}(?:\s|\s?\+\s?|-))?\s*([0-7])\s?\/\s?8${UNIT}$`, 'i');
const WHOLE = new RegExp(String.raw`^(\d{1,2}(?:[.,]\d{1,3})?)${UNIT}$`, 'i');
const WHOLE_WITHIN = /(?<![\d/])(\d{1,2})\s*(?:pgs?\.?|pages?)(?!\p{L})/iu;
const EIGHTHS_WITHIN =
  /(?<![\d/])(?:(\d{1,2})(?:\s+|\s?\+\s?|-))?([0-7])\s?\/\s?8(?!\d)(?:ths?)?\s*(?:pgs?\.?|pages?)?/i;

/** A page count that cannot be anything else: `'2 3/8'`, `'⅜'`. */
export const isEighths = (cell: string): boolean => EIGHTHS.test(inEighths(cell));

/** `'2 3/8 pgs'` is `'2 3/8'`, `'1½'` is `'1 4/8'`, `'1'` is `'1'`; empty if it is no count of pages. */
export function pagesIn(cell: string): string {
  const text = inEighths(cell);
  const eighths = EIGHTHS.exec(text);
  if (eighths) return [eighths[1]?.replace(/\D/g, ''), `${eighths[2]}/8`].filter(Boolean).join(' ');
  return WHOLE.exec(text)?.[1] ?? '';
}

/** A page count within a text, in eighths or with its unit, with the text before and after. */
export function pagesWithin(text: string): { before: string; pages: string; after: string } | null {
  const plain = inEighths(text);
  const found = EIGHTHS_WITHIN.exec(plain) ?? WHOLE_WITHIN.exec(plain);
  if (!found) return null;
  const [all, whole = '', eighths] = found;
  const start = plain.slice(0, found.index);
  const after = plain.slice(found.index + all.length).trim();
  // '1, 2 5/8': what follows a comma is one more of the list.
  const isListed = eighths !== undefined && whole !== '' && /[,&+]\s*$/.test(start);
  const before = (isListed ? `${start}${whole}` : start).trim();
  const pages = [isListed ? '' : whole, eighths && `${eighths}/8`].filter(Boolean).join(' ');
  return { before, pages, after };
}
