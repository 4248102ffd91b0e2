import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, test } from 'vitest';
import { drawFaults } from '../../.ci/draw-faults.mjs';
import { KINDS } from '../../.ci/fault-kinds.mjs';
import { faultsIn, plant } from '../../.ci/plant-faults.mjs';
import { openWarmTests } from '../../.ci/warm-tests.mjs';

const ROOT = resolve(import.meta.dirname, '../..');

/** What each kind makes of a piece of code. */
const EXAMPLES: Record<string, readonly (readonly [before: string, after: string])[]> = {
  'edge of a comparison': [
    ['a < b', 'a <= b'],
    ['a >= b', 'a > b'],
  ],
  'equal for not equal': [['a === b', 'a !== b']],
  'and for or': [['a && (b as X)', 'a || (b as X)']],
  'other arithmetic': [
    ['a - b', 'a + b'],
    ['a % b', 'a * b'],
    ['a += b', 'a -= b'],
  ],
  'least for most': [['Math.min(a, b)', 'Math.max(a, b)']],
  'rounded otherwise': [
    ['Math.floor(a)', 'Math.ceil(a)'],
    ['Math.round(a)', 'Math.floor(a)'],
  ],
  'first for last': [['a.find(b)', 'a.findLast(b)']],
  'some for every': [['a.every(b)', 'a.some(b)']],
  'fallback left out': [['a.b ?? c', 'a.b ']],
  'number one off': [
    ['f(47_999)', 'f(48000)'],
    ['f(1.5)', 'f(2.5)'],
  ],
  'true for false': [['f(true)', 'f(false)']],
  'element left out': [['[a, b, c]', '[b, c]']],
  'order reversed': [['a.sort(b)', 'a.sort((one, other) => (b)(other, one))']],
  'step left out': [
    ['a.toLowerCase()', 'a'],
    ['a?.filter(b)', 'a'],
  ],
  'early return left out': [
    ['if (a) return b;', ';'],
    ['if (a) { continue; }', ';'],
  ],
  'call left out': [['a.push(b);', ';']],
  'not left out': [['!a', 'a']],
  'condition negated': [['a && b ? c : d', '!(a && b) ? c : d']],
};

/** Where both `return` and `continue` may stand. */
const inLoop = (code: string): string => `function f() { for (;;) { ${code}\n } }`;

describe('a planted fault', () => {
  test.each(Object.keys(KINDS))('%s is what it is called', (kind) => {
    expect(EXAMPLES[kind]?.length).toBeGreaterThan(0);
    for (const [before, after] of EXAMPLES[kind]!) {
      const text = inLoop(before);
      const planted = faultsIn('it.ts', text).filter((fault) => fault.kind === kind);
      expect(planted.map((fault) => plant(text, fault))).toEqual([text.replace(before, after)]);
    }
  });

  test.each([
    'interface X { a: 1 | 2; b: true }',
    'const a = b as 1 | [1, 2, 3];',
    "throw new RangeError('from ' + a + (b ? 1 : 2));",
    "import a from './1.ts'; export * from './a.ts';",
    "a = 'b' + c; a = `b` + c;",
  ])('is nowhere in %s', (text) => {
    expect(faultsIn('it.ts', text)).toEqual([]);
  });

  test('lies in what a cast or a mark of TypeScript is around', () => {
    const text = 'const x = (a < b)! as X satisfies Y;';
    expect(faultsIn('it.ts', text).map((fault) => plant(text, fault))).toEqual([
      'const x = (a <= b)! as X satisfies Y;',
    ]);
  });

  test('is at the line it says, in code that can still be read', () => {
    const room = join(ROOT, 'src/wave');
    const files = readdirSync(room, { recursive: true, encoding: 'utf8' });
    for (const name of files.filter((file) => file.endsWith('.ts'))) {
      const text = readFileSync(join(room, name), 'utf8');
      for (const fault of faultsIn(name, text)) {
        const planted = plant(text, fault);
        expect(parseSync(name, planted).errors).toEqual([]);
        const line = planted.split('\n').findIndex((after, index) => after !== text.split('\n')[index]);
        expect(line + 1).toBe(fault.line);
      }
    }
  });
});

describe('the faults drawn', () => {
  const places = (seed: number, count = 20): string[] =>
    drawFaults(ROOT, 'time', { seed, count }).map(({ file, start, kind }) => `${file} ${start} ${kind}`);

  test('are the same for the same seed, others for another, and none comes twice', () => {
    expect(places(1)).toHaveLength(20);
    expect(new Set(places(1)).size).toBe(20);
    expect(places(1)).toEqual(places(1));
    expect(places(1)).not.toEqual(places(2));
    expect(places(1, 5)).toEqual(places(1).slice(0, 5));
  });

  test('move nothing on paper by a point, and are all others there', () => {
    const drawn = drawFaults(ROOT, 'report', { seed: 1, count: 2000 });
    const inPdf = drawn.filter(({ file }) => file.startsWith('src/report/pdf/'));
    const isOff = ({ kind }: { kind: string }) => kind === 'number one off';
    expect([inPdf.some(isOff), drawn.some(isOff), inPdf.length > 50]).toEqual([false, true, true]);
  });
});

test('the tests say which planted fault they see, end an endless loop, and are unharmed by those before', async () => {
  const file = 'tests/mutation/toy.ts';
  const text = readFileSync(join(ROOT, file), 'utf8');
  const warm = await openWarmTests(ROOT);
  const seenWith = (from: string, to: string, limitMs = 60_000): Promise<string | undefined> => {
    expect(text.split(from)).toHaveLength(2);
    return warm.fails(['tests/mutation/toy.test.ts'], { file, text: text.replace(from, to) }, limitMs);
  };
  try {
    expect(await seenWith('return 0', 'return 0')).toBeUndefined();
    expect(await seenWith('load <= capacity', 'load < capacity')).toBe(
      'tests/mutation/toy.test.ts: counts whole hours only',
    );
    expect(await seenWith('load <= 0', 'load < 1')).toBeUndefined();
    expect(await seenWith('hours += 1', 'hours -= 1', 5_000)).toBe('not done after 5 s');
    expect(await seenWith('return hours', 'retur hours')).toContain('toy.test.ts');
    expect(await seenWith('return 0', 'return 0')).toBeUndefined();
  } finally {
    await warm.close();
  }
  expect(readFileSync(join(ROOT, file), 'utf8')).toBe(text);
});
