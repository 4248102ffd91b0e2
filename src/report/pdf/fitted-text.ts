import { isolatedOnEach } from '../isolated.ts';
import type { Style } from './paper.ts';
import type { Pen } from './pen.ts';

/** Wraps at spaces to a width in points, splitting words longer than a line. Line breaks are kept. */
export function fittedLines(pen: Pen, text: string, style: Style, width: number): string[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [''];
    for (const word of paragraph.split(' ').flatMap((word) => cutToWidth(pen, word, style, width))) {
      const line = lines.at(-1)!;
      const longer = line === '' ? word : `${line} ${word}`;
      if (line === '' || pen.width(longer, style) <= width) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return isolatedOnEach(lines);
  });
}

function cutToWidth(pen: Pen, word: string, style: Style, width: number): string[] {
  if (pen.width(word, style) <= width) return [word];
  const pieces = [''];
  for (const letter of pen.lettersOf(word)) {
    const longer = pieces.at(-1)! + letter;
    if (longer !== letter && pen.width(longer, style) > width) pieces.push(letter);
    else pieces[pieces.length - 1] = longer;
  }
  return pieces;
}

/** The text, cut with an ellipsis if it is wider than `width`; empty if not even a letter fits. */
export function shortened(pen: Pen, text: string, style: Style, width: number): string {
  if (pen.width(text, style) <= width) return text;
  const letters = [...pen.lettersOf(text)];
  while (letters.length > 0) {
    letters.pop();
    const short = `${letters.join('').trimEnd()}…`;
    if (letters.length > 0 && pen.width(short, style) <= width) return short;
  }
  return '';
}

/** The style at the largest size, up to its own, at which the text fits. */
export const fitting = (pen: Pen, text: string, style: Style, width: number): Style => {
  const natural = pen.width(text, style);
  return natural <= width ? style : { ...style, size: Math.max(2.5, (style.size * width) / natural) };
};
