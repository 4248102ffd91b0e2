import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readDayFile, writeDayFile } from '../../../src/facts/day-file/day-file.ts';
import { DAY_FILE_LIMITS } from '../../../src/facts/day-file/day-file-lines.ts';
import type { Envelope } from '../../../src/facts/kinds/envelope.ts';
import { factId, HIGHEST_COUNTER } from '../../../src/shared/ids.ts';
import { DAY, envelopeOf, everyKind, sealed } from '../day-file-samples.ts';

const FACTS = everyKind();
/** Facts in the file: a head stands before them and an end after. */
const COUNT = FACTS.length;
const FILE = writeDayFile(DAY, 'Day 4', FACTS);
const LINES = FILE.trimEnd().split('\n');
const roll = (counter: number, value = '004'): Envelope =>
  envelopeOf(counter, 'roll-changed', { roll: value });
const json = (value: unknown): string => JSON.stringify(value);

const problemOf = (text: string) => {
  const read = readDayFile(text);
  return read.ok ? null : read.problem;
};
const fileOf = (text: string) => {
  const read = readDayFile(text);
  if (!read.ok) throw new Error(json(read.problem));
  return read.value;
};

describe('writing a day file', () => {
  test('gives a head, a fact a line, and an end', () => {
    expect(writeDayFile(DAY, 'Day 4', [roll(1)])).toBe(
      [
        // The checks by an independent tool: Python's zlib.crc32 over the second line, and over the first two lines with
        // a line feed between.
        '{"rollbook":"day-file","version":1,"day":"day-1","title":"Day 4","facts":1,"checks":"89e89417"}',
        '{"id":"000001-phonea00000","day":"day-1","kind":"roll-changed","v":1,"at":1791360000001,"zone":120,"roll":"004"}',
        '{"end":1,"check":"d45aee2f","checks":"89e89417"}',
        '',
      ].join('\n'),
    );
  });

  test('gives the same text for the same facts in any order, and changes none', () => {
    const before = structuredClone(FACTS);
    expect(writeDayFile(DAY, 'Day 4', FACTS.toReversed())).toBe(FILE);
    expect(FACTS).toEqual(before);
  });

  test('a fact marked unknown is written without the mark', () => {
    const { facts } = fileOf(FILE);
    expect(facts.some((fact) => 'unknown' in fact)).toBe(true);
    expect(writeDayFile(DAY, 'Day 4', facts)).toBe(FILE);
  });

  test('line feeds, markup and other scripts in fields stay on their line', () => {
    const facts = [roll(1, 'a\nb\r\n<script>alert(1)</script>\u2028\u{1f3a7} 音 \ud800')];
    const text = writeDayFile(DAY, '=1+1\n"', facts);
    expect(text.split('\n')).toHaveLength(4);
    expect(fileOf(new TextDecoder().decode(new TextEncoder().encode(text))).stored).toEqual(facts);
  });
});

describe('reading a day file', () => {
  test('gives day, title and facts, unknown kinds marked in one list and as stored in the other', () => {
    const file = fileOf(FILE);
    expect(file.day).toBe(DAY);
    expect(file.title).toBe('Day 4');
    expect(file.stored).toEqual(FACTS);
    expect(file.facts).toEqual(
      FACTS.map((fact) => (fact.kind === 'snake-coiled' ? { ...fact, unknown: true } : fact)),
    );
    expect(file.warnings).toEqual([{ code: 'facts-of-newer-version', count: 1, kinds: ['snake-coiled'] }]);
  });

  test.each([
    ['a byte order mark', `\ufeff${FILE}`],
    ['other line ends', FILE.replaceAll('\n', '\r\n')],
    ['blank lines', FILE.replaceAll('\n', '\n\n')],
    ['no line feed at the end', FILE.trimEnd()],
  ])('%s, as mail may add or take it, means nothing', (_, text) => {
    expect(readDayFile(text)).toEqual(readDayFile(FILE));
  });

  test('a day without facts is a day', () => {
    expect(fileOf(writeDayFile(DAY, '', []))).toEqual({
      day: DAY,
      title: '',
      facts: [],
      stored: [],
      warnings: [],
    });
  });

  test('a fact that comes twice with one body is read once, with a warning', () => {
    const file = fileOf(sealed([json(roll(1)), json(roll(2)), json(roll(1))]));
    expect(file.stored).toEqual([roll(1), roll(2)]);
    expect(file.warnings).toEqual([{ code: 'facts-repeated', count: 1 }]);
  });

  test('fields called __proto__ and constructor are just fields', () => {
    const line = `${json(roll(1)).slice(0, -1)},"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}`;
    const { stored, facts } = fileOf(sealed([line]));
    expect(Object.getPrototypeOf(stored[0])).toBe(Object.prototype);
    expect(Object.keys(facts[0]!)).toContain('__proto__');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(writeDayFile(DAY, 'Day 4', stored).split('\n')[1]).toBe(line);
  });

  test('nesting up to the limit is read', () => {
    const nested = `${'['.repeat(19)}${']'.repeat(19)}`;
    expect(fileOf(sealed([`${json(roll(1)).slice(0, -1)},"more":${nested}}`])).stored).toHaveLength(1);
  });

  test('brackets inside text do not nest', () => {
    expect(fileOf(sealed([json(roll(1, `"\\${'[{'.repeat(90)}`))])).stored).toHaveLength(1);
  });
});

const NESTED = `${json(roll(1)).slice(0, -1)},"more":${'['.repeat(20)}${']'.repeat(20)}}`;
const BODY = [json(roll(1)), json(roll(2))];

describe('a day file is refused as a whole, with what and where', () => {
  test.each<[string, string, object]>([
    ['nothing', ' \n\n', { code: 'day-file-empty' }],
    ['prose', 'Dear all,\nhere is the day.', { code: 'day-file-not-json', line: 1 }],
    ['a JSON list', '[1,2]', { code: 'day-file-not-json', line: 1 }],
    ['a page of markup', '<!doctype html><script>alert(1)</script>', { code: 'day-file-not-json', line: 1 }],
    ['another kind of JSON', '{"name":"x"}\n{}', { code: 'day-file-other-kind', line: 1, found: '' }],
    [
      'another kind of file of ours',
      sealed(BODY, { rollbook: 'rig-file' }),
      { code: 'day-file-other-kind', line: 1, found: 'rig-file' },
    ],
    [
      'a newer version',
      sealed(BODY, { version: 2, days: [] }),
      { code: 'day-file-newer', line: 1, version: 2, known: 1 },
    ],
    [
      'a version that is none',
      sealed(BODY, { version: 'one' }),
      { code: 'day-file-head-damaged', line: 1, where: 'version' },
    ],
    ['a head without its day', sealed(BODY, { day: null }), { code: 'day-file-head-damaged', where: 'day' }],
    ['a head cut off', LINES[0]!.slice(0, 40), { code: 'day-file-head-damaged', line: 1 }],
    ['only a head', LINES[0]!, { code: 'day-file-truncated', line: 1, expected: COUNT, found: 0 }],
    ['no end', LINES.slice(0, 5).join('\n'), { code: 'day-file-truncated', line: 5, expected: COUNT }],
    [
      'a line lost in the middle',
      LINES.toSpliced(4, 1).join('\n'),
      { code: 'day-file-count-wrong', line: COUNT + 1, expected: COUNT, found: COUNT - 1 },
    ],
    ['words after the end', `${FILE}Sent from the cart`, { code: 'day-file-goes-on', line: COUNT + 3 }],
    ['two files in one', FILE + FILE, { code: 'day-file-goes-on', line: COUNT + 3 }],
    [
      'a letter changed',
      FILE.replace('Salt Road', 'Silt Road'),
      { code: 'day-file-check-wrong', line: COUNT + 2 },
    ],
    [
      'a title changed',
      FILE.replace('"title":"Day 4"', '"title":"Day 5"'),
      { code: 'day-file-check-wrong', line: COUNT + 2 },
    ],
    ['a line that is no JSON', sealed([BODY[0]!, '{"id":']), { code: 'line-not-json', line: 3 }],
    ['a line that is no object', sealed([BODY[0]!, '7']), { code: 'line-not-json', line: 3 }],
    ['deep nesting', sealed([NESTED]), { code: 'line-too-deep', line: 2, limit: 20 }],
    ['a million brackets', sealed(['['.repeat(1_000_000)]), { code: 'line-too-deep', line: 2 }],
    [
      'a damaged fact',
      sealed([BODY[0]!, json({ ...roll(2), roll: 4 })]),
      { code: 'fact-damaged', line: 3, id: roll(2).id, where: 'roll' },
    ],
    [
      'a fact of another day',
      sealed([BODY[0]!, json({ ...roll(2), day: 'day-2' })]),
      { code: 'fact-of-another-day', line: 3, id: roll(2).id, day: 'day-2', expected: DAY },
    ],
    [
      'one id with two bodies',
      sealed([...BODY, json(roll(1, '005'))]),
      { code: 'fact-id-twice', line: 4, first: 2, id: roll(1).id },
    ],
    [
      'a counter beyond the limit',
      sealed([json({ ...roll(1), id: factId(HIGHEST_COUNTER + 1, 'phonea00000') })]),
      { code: 'counter-beyond-limit', line: 2, limit: HIGHEST_COUNTER },
    ],
    [
      'a seen counter beyond the limit',
      sealed([json({ ...roll(1), seen: { phoneb: HIGHEST_COUNTER + 1 } })]),
      { code: 'fact-damaged', line: 2, where: 'seen.phoneb' },
    ],
    [
      'too long a line',
      sealed([json({ ...roll(1), more: 'x'.repeat(DAY_FILE_LIMITS.lineLength) })]),
      { code: 'line-too-long', line: 2, limit: DAY_FILE_LIMITS.lineLength },
    ],
    [
      'too many facts',
      `${LINES[0]}\n${'{}\n'.repeat(DAY_FILE_LIMITS.facts + 2)}`,
      { code: 'day-file-too-many-facts', limit: DAY_FILE_LIMITS.facts },
    ],
  ])('%s', (_, text, problem) => {
    expect(problemOf(text)).toMatchObject(problem);
  });

  test.each([
    ['of one line', 'x'.repeat(50_000_000), 'day-file-too-large'],
    ['of blank lines behind a good head', `${LINES[0]}${'\n'.repeat(39_000_000)}`, 'day-file-too-many-facts'],
    ['of brackets behind a good head', `${LINES[0]}\n${'['.repeat(39_000_000)}`, 'day-file-truncated'],
    ['of lines', 'noise and more noise\n'.repeat(1_900_000), 'day-file-not-json'],
  ])(
    'megabytes of noise %s, within four seconds of work',
    (_, text, code) => {
      const from = process.cpuUsage();
      expect(problemOf(text)?.code).toBe(code);
      expect(process.cpuUsage(from).user / 1000).toBeLessThan(4000);
    },
    60_000,
  );
});

/** Facts of the shapes a day has, with anything in their texts, and of kinds not known here. */
const anyFacts = fc
  .uniqueArray(
    fc.record({
      counter: fc.nat(5000),
      text: fc.string({ unit: 'binary', maxLength: 30 }),
      more: fc.jsonValue({ maxDepth: 4 }),
      known: fc.boolean(),
    }),
    { selector: ({ counter }) => counter, maxLength: 12 },
  )
  .map((facts) =>
    facts.map(({ counter, text, more, known }) =>
      known
        ? envelopeOf(counter, 'roll-changed', { roll: text, more })
        : envelopeOf(counter, 'snake-coiled', { text, more }),
    ),
  );

describe('a file as it travels', () => {
  test('whatever was written is read back the same (seed 11)', () => {
    fc.assert(
      fc.property(anyFacts, fc.string({ unit: 'binary', maxLength: 200 }), (facts, title) => {
        const text = writeDayFile(DAY, title, facts);
        const file = fileOf(text);
        expect(file.title).toBe(title.slice(0, 200));
        // Through JSON once, because it knows no negative zero.
        expect(file.stored).toEqual(JSON.parse(json(facts.toSorted((a, b) => (a.id < b.id ? -1 : 1)))));
        expect(writeDayFile(DAY, title, file.facts)).toBe(text);
      }),
      { seed: 11, numRuns: 300 },
    );
  }, 60_000);

  const SMALL = writeDayFile(DAY, 'Tag 4 – Küste', [roll(1, 'é'), envelopeOf(2, 'snake-coiled', { m: 50 })]);
  const BYTES = new TextEncoder().encode(SMALL);
  const readBytes = (bytes: Uint8Array) => readDayFile(new TextDecoder().decode(bytes));
  const whole = readBytes(BYTES);

  test('cut short anywhere it is refused, or all of it is there', () => {
    const wrong = Array.from(BYTES, (_, length) => length).filter((length) => {
      const read = readBytes(BYTES.slice(0, length));
      return read.ok && json(read) !== json(whole);
    });
    expect(wrong).toEqual([]);
    expect(readBytes(BYTES.slice(0, -2)).ok).toBe(false);
  });

  test('with any one bit flipped it is refused, or reads the same', () => {
    const wrong: number[] = [];
    let harmless = 0;
    for (let bit = 0; bit < BYTES.length * 8; bit += 1) {
      const flipped = BYTES.slice();
      flipped[bit >> 3]! ^= 1 << (bit & 7);
      const read = readBytes(flipped);
      if (read.ok) harmless += 1;
      if (read.ok && json(read) !== json(whole)) wrong.push(bit);
    }
    expect(wrong).toEqual([]);
    expect(harmless).toBeLessThan(10);
  }, 60_000);

  test('with any one byte replaced by any other it is refused, or reads the same (seed 12)', () => {
    fc.assert(
      fc.property(fc.nat(BYTES.length - 1), fc.nat(255), (at, byte) => {
        const changed = BYTES.slice();
        changed[at] = byte;
        const read = readBytes(changed);
        return !read.ok || json(read) === json(whole);
      }),
      { seed: 12, numRuns: 3000 },
    );
  }, 60_000);
});
