import { describe, expect, test } from 'vitest';
import { readDayFile, writeDayFile } from '../../../src/facts/day-file/day-file.ts';
import {
  DAY_FILE_LIMITS,
  linesOf,
  parseLine,
  readEnd,
  readHead,
  shown,
} from '../../../src/facts/day-file/day-file-lines.ts';
import { readDayFileLeniently } from '../../../src/facts/day-file/salvage-day-file.ts';
import { factId, HIGHEST_COUNTER } from '../../../src/shared/ids.ts';
import { DAY, envelopeOf, sealed } from '../day-file-samples.ts';

const json = (value: unknown): string => JSON.stringify(value);
const roll = (counter: number, more: object = {}) =>
  envelopeOf(counter, 'roll-changed', { roll: '004', ...more });
const line = (text: string, number = 1) => ({ number, text });

describe('the lines of a day file', () => {
  test('are counted from 1, blank ones too, and come without white space around them', () => {
    expect(linesOf('\n a \r\n\n\tb')).toEqual({ ok: true, value: [line('a', 2), line('b', 4)] });
  });

  test('may be as many as a head, 200,000 facts and an end, and four times as many with blank ones', () => {
    expect(DAY_FILE_LIMITS.facts).toBe(200_000);
    expect(linesOf('{}\n'.repeat(200_002))).toMatchObject({ ok: true });
    expect(linesOf('{"rollbook":"day-file"}\n'.repeat(200_003))).toMatchObject({ ok: false });
    expect(linesOf(`a${'\n'.repeat(799_999)}`)).toMatchObject({ ok: true });
    expect(linesOf(`a${'\n'.repeat(800_000)}`)).toMatchObject({ ok: false });
  });

  test('may hold forty million characters together, and four million each', () => {
    const { size, lineLength } = DAY_FILE_LIMITS;
    expect([size, lineLength]).toEqual([40_000_000, 4_000_000]);
    expect(linesOf('x'.repeat(size))).toMatchObject({ ok: true });
    expect(linesOf('x'.repeat(size + 1))).toEqual({
      ok: false,
      problem: { code: 'day-file-too-large', size: size + 1, limit: size },
    });
    const long = (length: number) => line(`{"a":"${'x'.repeat(length - 8)}"}`, 7);
    expect(parseLine(long(lineLength))).toMatchObject({ ok: true });
    expect(parseLine(long(lineLength + 1))).toEqual({
      ok: false,
      problem: { code: 'line-too-long', line: 7, length: lineLength + 1, limit: lineLength },
    });
  });

  test('nest up to twenty brackets, of which those in a text are none', () => {
    const nested = (depth: number, text = '') =>
      parseLine(line(`{"a":${'[{"b":'.repeat((depth - 1) / 2)}"${text}"${'}]'.repeat((depth - 1) / 2)}}`));
    expect(nested(19)).toMatchObject({ ok: true });
    expect(nested(21)).toMatchObject({ ok: false, problem: { code: 'line-too-deep', limit: 20 } });
    expect(nested(19, '[{'.repeat(30))).toMatchObject({ ok: true });
    expect(nested(19, '\\"[[[')).toMatchObject({ ok: true });
    expect(parseLine(line(`{"a":[[]],"b":[[]]${',"c":[[{}]]'.repeat(30)}}`))).toMatchObject({ ok: true });
  });

  test.each(['[]', '7', 'null', '"a"', '{'])('that hold %s hold no fact', (text) => {
    expect(parseLine(line(text, 3))).toEqual({ ok: false, problem: { code: 'line-not-json', line: 3 } });
  });

  test('name a foreign value by its first eighty characters, and none that is no text', () => {
    expect(shown('x'.repeat(81))).toBe('x'.repeat(80));
    expect(shown(7)).toBe('');
  });
});

describe('the head and the end of a day file', () => {
  const head = { rollbook: 'day-file', version: 1, day: DAY, title: '', facts: 0 };

  test.each([
    [{ facts: 200_000 }, true],
    [{ facts: 200_001 }, false],
    [{ facts: -1 }, false],
    [{ title: 'x'.repeat(200) }, true],
    [{ title: 'x'.repeat(201) }, false],
    [{ version: 0 }, false],
  ])('a head with %j is one: %s', (more, isOne) => {
    expect(readHead(line(json({ ...head, ...more }))).ok).toBe(isOne);
  });

  test.each([
    ['{"end":200000,"check":"0123abcd"}', { end: 200_000, check: '0123abcd' }],
    ['{"end":200001,"check":"0123abcd"}', null],
    ['{"end":0,"check":"0123abc"}', null],
    ['{"end":0,"check":"0123ABCD"}', null],
    ['{"check":"0123abcd","end":0}', null],
    ['{"end":0', null],
  ])('%s gives the end %j', (text, end) => {
    expect(readEnd(line(text))).toEqual(end);
  });
});

describe('what a day file holds besides', () => {
  test('kinds of a newer version are named each once, the first twenty of them', () => {
    const kinds = Array.from({ length: 21 }, (_, index) => `snake-${String.fromCharCode(117 - index)}`);
    const facts = [...kinds, kinds[0]!].map((kind, index) => envelopeOf(index + 1, kind, {}));
    expect(readDayFile(writeDayFile(DAY, '', facts))).toMatchObject({
      ok: true,
      value: {
        warnings: [{ code: 'facts-of-newer-version', count: 22, kinds: kinds.toSorted().slice(0, 20) }],
      },
    });
  });

  test('only what would be an id with a lower counter has its counter beyond the limit', () => {
    const first = (id: string) => readDayFile(sealed([json({ ...roll(1), id })]));
    const beyond = factId(HIGHEST_COUNTER + 1, 'phonea00000');
    expect(first(beyond)).toMatchObject({ problem: { code: 'counter-beyond-limit', id: beyond } });
    expect(first(`${beyond}0`)).toMatchObject({ problem: { code: 'fact-damaged', where: 'id' } });
    expect(first(factId(HIGHEST_COUNTER, 'phonea00000'))).toMatchObject({ ok: true });
  });
});

describe('a damaged day file', () => {
  const salvaged = (text: string) => {
    const read = readDayFileLeniently(text);
    return read.ok ? read.value : null;
  };

  test('counts what is missing without what came twice', () => {
    const lines = sealed([roll(1), roll(2), roll(3), roll(1)].map(json)).split('\n');
    expect(salvaged(lines.join('\n'))).toMatchObject({ damaged: 0, missing: 0 });
    expect(salvaged(lines.toSpliced(2, 1).join('\n'))).toMatchObject({ damaged: 0, missing: 1 });
    expect(salvaged([...lines.slice(0, 5), json(roll(9))].join('\n'))).toMatchObject({ missing: 0 });
  });

  test('without its head counts that line, and names it first', () => {
    const file = salvaged(['noise', ...Array<string>(100).fill('more noise'), json(roll(1))].join('\n'));
    expect(file).toMatchObject({ day: DAY, damaged: 101, missing: 0 });
    expect(file?.problems).toHaveLength(100);
    expect(file?.problems[0]).toMatchObject({ code: 'day-file-not-json', line: 1 });
    expect(file?.problems[1]).toMatchObject({ code: 'line-not-json', line: 2 });
  });

  test('of which nothing can be read says how many lines there were and what is wrong with the first', () => {
    expect(readDayFileLeniently('noise\nmore noise\n{"id":7}')).toEqual({
      ok: false,
      problem: {
        code: 'day-file-nothing-readable',
        lines: 3,
        first: { code: 'line-not-json', line: 2 },
      },
    });
  });
});
