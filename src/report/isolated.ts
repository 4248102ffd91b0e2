/** First-strong isolate, and its end (Unicode Standard Annex 9, 2.4). */
const FSI = '\u2068';
const PDI = '\u2069';

/** Right-to-left letters and marks (the Unicode blocks reserved for them). */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\u200f\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * A name among other words. A right-to-left name would pull neighbouring numbers to its other side, next to
 * another name, so it is isolated. All other text is unchanged.
 */
export const isolated = (text: string): string =>
  RIGHT_TO_LEFT.test(text) && !text.includes(FSI)
    ? text
        .split('\n')
        .map((line) => (line === '' ? line : FSI + line + PDI))
        .join('\n')
    : text;

/** For cells and other places with only one text. */
export const withoutIsolates = (text: string): string => text.replaceAll(/[\u2068\u2069]/g, '');

/** Wrapped lines of one text: an isolate that spans a break is closed and reopened. */
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

/** In markup an isolate is an element; `text` is already escaped. Unpaired ones are dropped. */
export const isolatesAsElements = (text: string): string =>
  withoutIsolates(text.replaceAll(/\u2068([^\u2068\u2069]*)\u2069/g, '<bdi>$1</bdi>'));

/** Whether the first letter that has a direction goes from right to left (Unicode Annex 9, P2). */
export function startsRightToLeft(text: string): boolean {
  const [first] = /\p{L}/u.exec(text) ?? [''];
  return RIGHT_TO_LEFT.test(first);
}

/** The stretches of a line: isolates, and what stands between them. A line that has none is whole itself. */
export function isolatesIn(text: string): { readonly text: string; readonly isWhole: boolean }[] {
  if (!text.includes(FSI)) return [{ text, isWhole: true }];
  const found: { text: string; isWhole: boolean }[] = [];
  let [depth, part] = [0, ''];
  const end = (isWhole: boolean): void => {
    if (part !== '') found.push({ text: part, isWhole });
    part = '';
  };
  for (const character of text) {
    if (character === FSI) {
      if (depth === 0) end(false);
      depth += 1;
    } else if (character === PDI) {
      if (depth === 1) end(true);
      depth = Math.max(0, depth - 1);
    } else part += character;
  }
  end(depth > 0);
  return found;
}
