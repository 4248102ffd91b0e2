import { isolatedOnEach } from '../isolated.ts';

/** Columns a text takes in a fixed-width font: combining marks take none, wide characters two. */
export function textWidth(text: string): number {
  // Most text is plain; examining every character would take ten times as long.
  if (/^[ -~·]*$/.test(text)) return text.length;
  let width = 0;
  for (const character of text) {
    if (/[\p{M}\p{Cf}]/u.test(character)) continue;
    width += WIDE.test(character) ? 2 : 1;
  }
  return width;
}

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

export const padTo = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - textWidth(text)));

/** Splits a word that is longer than a line. */
function pieces(word: string, width: number): string[] {
  if (textWidth(word) <= width) return [word];
  const cut: string[] = [''];
  for (const character of word) {
    if (textWidth(cut.at(-1)! + character) > width) cut.push('');
    cut[cut.length - 1] += character;
  }
  return cut;
}

const BLANK_AT_AN_END = /^ | $/;

/** Wraps at spaces to at most `width` columns; line breaks in the text are kept. */
export function wrapText(text: string, width: number): string[] {
  return text.split('\n').flatMap((paragraph) => {
    if (textWidth(paragraph) <= width && !BLANK_AT_AN_END.test(paragraph)) return [paragraph];
    const lines: string[] = [];
    let line = '';
    let taken = 0;
    for (const word of paragraph.split(' ').flatMap((word) => pieces(word, width))) {
      const wide = textWidth(word);
      const isFirst = line === '';
      if (!isFirst && taken + 1 + wide > width) {
        lines.push(line);
        line = word;
        taken = wide;
      } else {
        line = isFirst ? word : `${line} ${word}`;
        taken += isFirst ? wide : wide + 1;
      }
    }
    return isolatedOnEach([...lines, line]);
  });
}

/** Puts units side by side with `between` them, breaking lines only between units if possible. */
export function wrapUnits(units: readonly string[], between: string, width: number): string[] {
  const lines: string[] = [];
  const gap = textWidth(between);
  let taken = 0;
  for (const unit of units) {
    const wide = textWidth(unit);
    if (lines.length > 0 && taken + gap + wide <= width) {
      lines[lines.length - 1] += between + unit;
      taken += gap + wide;
    } else {
      lines.push(...wrapText(unit, width));
      taken = textWidth(lines.at(-1)!);
    }
  }
  return lines;
}
