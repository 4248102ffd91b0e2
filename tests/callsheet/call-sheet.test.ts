import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readCallSheet } from '../../src/callsheet/call-sheet.ts';

// All productions, names and places are invented; arrangements are common practice, no source.

const SHEETS = join(import.meta.dirname, 'sheets');
const names = readdirSync(SHEETS)
  .filter((name) => !name.endsWith('.expected.txt'))
  .map((name) => name.replace('.txt', ''));
const textOf = (name: string): string => readFileSync(join(SHEETS, `${name}.txt`), 'utf8');

/** What was read, in the form of the answers: one line each, empty cells at the end left out. */
function answerOf(text: string): string[] {
  const { scenes, cast } = readCallSheet(text);
  const line = (kind: string, cells: readonly string[]): string =>
    `${kind} ${cells.join(' | ')}`.replace(/[ |]+$/, '').replaceAll('|  |', '| |');
  return [
    ...scenes.map((one) =>
      line('scene', [
        one.number,
        one.intExt,
        one.set,
        one.dayNight,
        one.pages,
        one.cast.join(','),
        one.crowd,
        one.synopsis,
      ]),
    ),
    ...cast.map((one) => line('cast', [one.number, one.part, one.person, one.pickUp, one.onSet])),
  ].map((one) => one.replace(/\s+/g, ' '));
}

describe('thirty call sheets', () => {
  test.each(names)('%s', (name) => {
    const expected = readFileSync(join(SHEETS, `${name}.expected.txt`), 'utf8')
      .trim()
      .split('\n');
    const isAside = (line: string): boolean => line.startsWith('aside ');
    const rows = expected.filter((line) => !isAside(line));
    expect(answerOf(textOf(name))).toEqual(
      rows.map((line) => line.replace(/[ |]+$/, '').replace(/\s+/g, ' ')),
    );
    const aside = readCallSheet(textOf(name)).aside.map(({ text }) => text.trim());
    for (const line of expected.filter(isAside)) expect(aside).toContain(line.slice('aside '.length).trim());
  });

  test('are thirty', () => {
    expect(names).toHaveLength(30);
  });
});
