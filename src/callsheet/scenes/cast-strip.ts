/** Who is in a scene, as the strip of a schedule says it. */
export interface Strip {
  /** Cast numbers, or names where the sheet has names. */
  readonly cast: readonly string[];
  readonly crowd: string;
  /** False if something in it could be read in two ways. */
  readonly clear: boolean;
}

const CROWD =
  /^(?:atmos|atmosphere|b\.?\/?g\.?|background|extras?|s\.?a\.?s?|supporting artists?|crowd|komparsen?|komparserie|figurants?|figuraci[oó]n|comparse|statist(?:er|en)?|stand-?ins?|stunts?|doubles?|utility)(?![\p{L}])/iu;
const COUNTED = /^(?:\d{1,3}|\+|ca\.?|approx\.?)\s?[x×]?\s*\p{L}{2}/iu;
const RANGE = /^(\d{1,4})\s?(?:[-–]|to|bis)\s?(\d{1,4})$/i;
const NUMBER = /^#?(\d{1,4}(?:\.\d)?[a-z]{0,2})\.?$/i;
const LONGEST_RANGE = 60;

/** Numbers of a strip stand apart by commas, or by nothing but spaces. */
function piecesOf(text: string): string[] {
  const spaced = text
    .replace(/\s*[-–]\s*(?=\d)/g, '-')
    .replace(/(\d)\s*(?:to|bis)\s*(?=\d)/gi, '$1-')
    .replace(/\(([^()]*)\)/g, ' ')
    .split(/[,;+&\n]|\s\/\s|(?<=\d)\/(?=\d)/);
  return spaced.flatMap((piece) => {
    const words = piece.trim().split(/\s+/).filter(Boolean);
    return words.every((word) => NUMBER.test(word) || RANGE.test(word)) ? words : [words.join(' ')];
  });
}

function rangeOf(piece: string): string[] | null {
  const found = RANGE.exec(piece);
  if (!found) return null;
  const [from, to] = [Number(found[1]), Number(found[2])];
  if (to <= from || to - from > LONGEST_RANGE) return null;
  return Array.from({ length: to - from + 1 }, (_value, at) => String(from + at));
}

/**
 * Reads who is in a scene. `'1, 2, 5-8'` is 1, 2, 5, 6, 7, 8; `'1x 4'` is 1x and 4, `'4, ATMOS'` is 4 and a
 * crowd, `'12 x Villagers'` is a crowd and nobody by number.
 */
export function readStrip(text: string): Strip {
  const cast: string[] = [];
  const crowd: string[] = [];
  let clear = !text.includes('(');
  for (const piece of piecesOf(text)) {
    const range = rangeOf(piece);
    const number = NUMBER.exec(piece)?.[1];
    if (range) cast.push(...range);
    else if (number) cast.push(number);
    else if (CROWD.test(piece) || COUNTED.test(piece)) crowd.push(piece);
    else if (RANGE.test(piece) || /\d/.test(piece)) {
      clear = false;
      cast.push(piece);
    } else if (/\p{L}/u.test(piece)) cast.push(piece);
  }
  if (cast.some((one) => /\dx$/i.test(one))) clear = false;
  return { cast: [...new Set(cast)].filter((one) => one.length <= 200), crowd: crowd.join(', '), clear };
}

/** Whether a cell holds cast numbers and background only: no names, and nothing that is a sentence. */
export function isStrip(cell: string): boolean {
  const pieces = piecesOf(cell);
  return (
    pieces.length > 0 &&
    pieces.every((piece) => NUMBER.test(piece) || RANGE.test(piece) || CROWD.test(piece)) &&
    /\d|\p{L}/u.test(cell)
  );
}

/** A strip of several numbers, which can be nothing else. */
export const isLongStrip = (cell: string): boolean => isStrip(cell) && piecesOf(cell).length > 1;
