import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { linesOf, readLines } from '../../src/storage/copy-lines.ts';

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
