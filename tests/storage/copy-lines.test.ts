import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { linesOf, readCopies } from '../../src/storage/copy-lines.ts';

/** The facts of such lines, whole or without a check. */
function factsIn(text: string) {
  const { whole, unchecked } = readCopies(text);
  return [...whole, ...unchecked];
}

const facts = loadSampleFile('small').stored;

describe('the lines of the copy beside the database', () => {
  test('give back what was said, each id once and the first one said', () => {
    const text = facts.flatMap((fact) => linesOf([fact]).map(([, line]) => line)).join('');
    expect(factsIn(text + text)).toEqual(facts);
    const [first] = facts;
    const other = JSON.stringify([{ ...first!, at: first!.at + 1 }]);
    expect(factsIn(`${text}\n${other}\n`)).toEqual(facts);
  });

  test('keep days apart', () => {
    const [one, two] = facts;
    const lines = linesOf([one!, { ...two!, day: 'another' }]);
    expect(lines.map(([day]) => day)).toEqual([one!.day, 'another']);
  });

  test.each([1, 7, 40])('lose only the line that was torn, %i bytes before its end', (missing) => {
    const [torn, ...rest] = facts.map((fact) => linesOf([fact])[0]![1]);
    expect(factsIn(torn!.slice(0, -missing - 1) + rest.join(''))).toEqual(facts.slice(1));
  });

  test('tell a changed letter from a whole entry, whichever it is, and what has no check from both', () => {
    const said = facts.map((fact) => linesOf([fact])[0]![1]);
    const changed = said.with(0, said[0]!.replace('Ledger', 'Lodger'));
    expect(changed[0]).not.toBe(said[0]);
    expect(readCopies(changed.join(''))).toEqual({
      whole: facts.slice(1),
      unchecked: [],
      changed: [facts[0]!.id],
    });
    // A whole one, wherever it stands, counts for more.
    expect(readCopies(changed.join('') + said[0]).whole).toHaveLength(facts.length);
    expect(readCopies(changed.join('') + said[0]).changed).toEqual([]);
    const older = facts.map((fact) => `\n${JSON.stringify([fact])}\n`).join('');
    expect(readCopies(older)).toEqual({ whole: [], unchecked: facts, changed: [] });
    const unsure = linesOf(facts, new Set([facts[1]!.id]))[0]![1];
    expect(readCopies(unsure).unchecked).toEqual([facts[1]]);
  });

  test('are read by an app from before the checks: the facts are what it knows of the array', () => {
    const [, line] = linesOf(facts.slice(0, 3))[0]!;
    const read: unknown[] = JSON.parse(line);
    expect(read.slice(0, 3)).toEqual(facts.slice(0, 3));
    expect(read.slice(3)).toEqual([expect.any(String)]);
  });

  test('with any one bit of a line flipped give no fact that nobody said', () => {
    const [, line] = linesOf(facts.slice(-1))[0]!;
    const bytes = new TextEncoder().encode(line);
    const untrue: number[] = [];
    for (let bit = 0; bit < bytes.length * 8; bit += 1) {
      const flipped = bytes.slice();
      flipped[bit >> 3]! ^= 1 << (bit & 7);
      const { whole, unchecked } = readCopies(new TextDecoder().decode(flipped));
      const said = JSON.stringify(facts.at(-1));
      if ([...whole, ...unchecked].some((fact) => JSON.stringify(fact) !== said)) untrue.push(bit);
    }
    expect(untrue).toEqual([]);
  });

  test('leave out whatever is no fact', () => {
    expect(factsIn('null\n{}\n[1, null, {"id": "x"}]\n<script>\n[{"__proto__": {}}]\n')).toEqual([]);
  });
});
