/** First-strong isolate, and its end (Unicode Standard Annex 9, 2.4). */
const FSI = '\u2068';
const PDI = '\u2069';

/** Letters that are written from right to left, and the marks that say so (the blocks of Unicode that are kept for them). */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\u200f\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * A name that is set among other words. One that is written from right to left would draw the numbers beside it to its other
 * side, and to another name; isolated it keeps to itself. All other text stays as it is.
 */
export const isolated = (text: string): string =>
  RIGHT_TO_LEFT.test(text) && !text.includes(FSI)
    ? text
        .split('\n')
        .map((line) => (line === '' ? line : FSI + line + PDI))
        .join('\n')
    : text;

/** For cells and whatever else holds one text alone. */
export const withoutIsolates = (text: string): string => text.replaceAll(/[\u2068\u2069]/g, '');

/** Lines of one text that was broken: what is isolated over a break is so on both of its lines. */
export function isolatedOnEach(lines: readonly string[]): readonly string[] {
  if (!lines.some((line) => line.includes(FSI))) return lines;
  let open = 0;
  return lines.map((line) => {
    const before = open;
    for (const character of line) {
      if (character === FSI) open += 1;
      else if (character === PDI && open > 0) open -= 1;
    }
    return FSI.repeat(before) + line + PDI.repeat(open);
  });
}

/** In markup an isolate is an element; `text` is escaped already. What has no pair is left out. */
export const isolatesAsElements = (text: string): string =>
  withoutIsolates(text.replaceAll(/\u2068([^\u2068\u2069]*)\u2069/g, '<bdi>$1</bdi>'));
