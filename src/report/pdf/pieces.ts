import { isolatesIn, startsRightToLeft } from '../isolated.ts';

/** A stretch of a line in the order drawn: by the fonts of the pages, or by the letters of the system. */
export interface Piece {
  readonly text: string;
  readonly by: 'page' | 'system';
  readonly isRightToLeft: boolean;
}

/** Which characters the fonts of the pages and the system have. */
export interface Drawers {
  readonly page: (character: string) => boolean;
  readonly system: (character: string) => boolean;
}

const RIGHT_TO_LEFT = String.raw`\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Adlam}`;
/** Letters from right to left, with what stands between them and figures after them (Unicode Annex 9, N1 and W7). */
const RUN_TO_LEFT = new RegExp(
  `[${RIGHT_TO_LEFT}](?:(?:(?![${RIGHT_TO_LEFT}])\\P{L})*[${RIGHT_TO_LEFT}\\p{M}\\p{Nd}])*`,
  'gu',
);

/** A letter with what belongs to it: marks, selectors, and what a joiner ties to it. */
const CLUSTER = /\P{M}(?:\p{M}|\p{Emoji_Modifier}|\u200d\P{M})*|\p{M}+/gu;
export const clustersOf = (text: string): readonly string[] => text.match(CLUSTER) ?? [];

/** Controls and selectors that are not drawn themselves. */
export const isUndrawn = (character: string): boolean => /\p{Cf}|\p{Variation_Selector}/u.test(character);

/**
 * A line from left to right, in which isolated names have their own direction, and so has a text that is one
 * name. Words are not divided: half a word in another font reads badly.
 */
export function piecesOf(text: string, drawers: Drawers): Piece[] {
  const pieces: Piece[] = [];
  for (const { text: part, isWhole } of isolatesIn(text)) {
    if (isWhole && startsRightToLeft(part)) add(pieces, drawn(part, drawers, true));
    else for (const one of oneWay(part, drawers)) add(pieces, one);
  }
  return pieces;
}

function* oneWay(text: string, drawers: Drawers): Generator<Piece> {
  let done = 0;
  for (const { 0: run, index } of text.matchAll(RUN_TO_LEFT)) {
    yield* words(text.slice(done, index), drawers);
    yield drawn(run, drawers, true);
    done = index + run.length;
  }
  yield* words(text.slice(done), drawers);
}

function* words(text: string, drawers: Drawers): Generator<Piece> {
  for (const word of text.match(/ +|[^ ]+/g) ?? []) yield drawn(word, drawers, false);
}

/** Stands for what neither can draw. */
export const MISSING = '?';

function drawn(text: string, { page, system }: Drawers, isRightToLeft: boolean): Piece {
  const needsSystem = [...text].some((one) => system(one) && (!page(one) || /\p{M}/u.test(one)));
  if (!needsSystem) return { text, by: 'page', isRightToLeft: false };
  const known = (one: string): boolean => one === ' ' || isUndrawn(one) || system(one);
  return {
    text: Array.from(text, (one) => (known(one) ? one : MISSING)).join(''),
    by: 'system',
    isRightToLeft,
  };
}

/** Joins pieces of one kind; a space between two words of the system is theirs. */
function add(pieces: Piece[], piece: Piece): void {
  if (piece.text === '') return;
  const last = pieces.at(-1);
  const isSame = last && last.by === piece.by && last.isRightToLeft === piece.isRightToLeft;
  if (isSame && !piece.isRightToLeft) {
    pieces[pieces.length - 1] = { ...last, text: last.text + piece.text };
    return;
  }
  const before = pieces.at(-2);
  if (last?.text.trim() === '' && before && isLeftToRightOfSystem(before) && isLeftToRightOfSystem(piece)) {
    pieces.splice(-2, 2, { ...before, text: before.text + last.text + piece.text });
    return;
  }
  pieces.push(piece);
}

const isLeftToRightOfSystem = ({ by, isRightToLeft }: Piece): boolean => by === 'system' && !isRightToLeft;

/**
 * The characters of a run from left to right, as programs expect that read text from pages: letters from right to
 * left turned round, figures and Latin words among them not (Unicode Annex 9, L2).
 */
export function fromLeft({
  text,
  isRightToLeft,
}: {
  readonly text: string;
  readonly isRightToLeft: boolean;
}): string[] {
  const characters = [...text];
  if (!isRightToLeft) return characters;
  const turned = characters.reverse().join('');
  return [...turned.replaceAll(LEFT_TO_RIGHT, (run) => [...run].reverse().join(''))];
}

const LEFT = `(?![${RIGHT_TO_LEFT}])[\\p{L}\\p{Nd}]`;
const LEFT_TO_RIGHT = new RegExp(`${LEFT}(?:[^${RIGHT_TO_LEFT}]*${LEFT})?`, 'gu');
