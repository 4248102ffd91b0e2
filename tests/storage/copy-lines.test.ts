import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { compare, linesOf, readLines } from '../../src/storage/copy-lines.ts';

const facts = loadSampleFile('small').stored;

describe('the lines of the copy beside the database', () => {
  test('give back what was said, each id once and the first one said', () => {
    const text = facts.flatMap((fact) => linesOf([fact]).map(([, line]) => line)).join('');
    expect(readLines(text + text)).toEqual(facts);
    const [first] = facts;
    const other = JSON.stringify([{ ...first!, at: first!.at + 1 }]);
    expect(readLines(`${text}\n${other}\n`)).toEqual(facts);
  });

  test('keep days apart', () => {
    const [one, two] = facts;
    const lines = linesOf([one!, { ...two!, day: 'another' }]);
    expect(lines.map(([day]) => day)).toEqual([one!.day, 'another']);
  });

  test.each([1, 7, 40])('lose only the line that was torn, %i bytes before its end', (missing) => {
    const [torn, ...rest] = facts.map((fact) => linesOf([fact])[0]![1]);
    expect(readLines(torn!.slice(0, -missing - 1) + rest.join(''))).toEqual(facts.slice(1));
  });

  test('leave out whatever is no fact', () => {
    expect(readLines('null\n{}\n[1, null, {"id": "x"}]\n<script>\n[{"__proto__": {}}]\n')).toEqual([]);
  });
});

describe('a day in the copies and in the database', () => {
  test.each([0, 1, 2])('each gets what the other has: kills on either side (%i)', (from) => {
    const stored = facts.filter((_, at) => at % 3 !== from);
    const copied = facts.filter((_, at) => at % 3 !== (from + 1) % 3);
    const { onlyStored, onlyCopied } = compare(copied, stored);
    expect(onlyCopied).toEqual(facts.filter((_, at) => at % 3 === from));
    expect(onlyStored).toEqual(facts.filter((_, at) => at % 3 === (from + 1) % 3));
    expect(compare([...copied, ...onlyStored], [...stored, ...onlyCopied])).toEqual({
      onlyStored: [],
      onlyCopied: [],
    });
  });

  test('are the same with their fields in another order', () => {
    const turned = facts.map((fact) => Object.fromEntries(Object.entries(fact).reverse()));
    expect(compare(facts, turned)).toEqual({ onlyStored: [], onlyCopied: [] });
  });

  test('differ where an entry is damaged: what cannot be read is no entry, what says something else is none either', () => {
    const [first, second, ...rest] = facts;
    const damaged = [{ ...first!, kind: 7 }, { ...second!, at: 1 }, null, 'x', ...rest];
    expect(compare(facts, damaged)).toEqual({ onlyStored: [], onlyCopied: [first, second] });
  });
});
