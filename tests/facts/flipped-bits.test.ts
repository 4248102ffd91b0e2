import { describe, expect, test } from 'vitest';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { readDayFileLeniently } from '../../src/facts/day-file/salvage-day-file.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { DAY, envelopeOf, sealed } from './day-file-samples.ts';

const FACTS = ['a', 'bé', 'c'].map((value, at) => envelopeOf(at + 1, 'roll-changed', { roll: value }));
const BYTES = new TextEncoder().encode(writeDayFile(DAY, 'Day 4', FACTS));
const json = (value: unknown): string => JSON.stringify(value);

const kept = (bytes: Uint8Array): readonly Envelope[] => {
  const read = readDayFileLeniently(new TextDecoder().decode(bytes));
  return read.ok ? read.value.stored : [];
};

describe('a day file with flipped bits', () => {
  test('gives no entry that says what nobody said, whichever bit was flipped, and all whole ones', () => {
    const whole = new Set(FACTS.map(json));
    const untrue: number[] = [];
    const costly: number[] = [];
    for (let bit = 0; bit < BYTES.length * 8; bit += 1) {
      const flipped = BYTES.slice();
      flipped[bit >> 3]! ^= 1 << (bit & 7);
      const entries = kept(flipped);
      if (entries.some((fact) => !whole.has(json(fact)))) untrue.push(bit);
      // A flip that takes a line break away touches two lines.
      if (entries.length < FACTS.length - 2) costly.push(bit >> 3);
    }
    expect(untrue).toEqual([]);
    // Only what says that it is a day file of this version costs all of it, and then it is refused.
    const version = new TextDecoder().decode(BYTES).indexOf(',"day"');
    expect(Math.max(...costly)).toBeLessThan(version);
  });

  test('names the line of the entry that was changed', () => {
    const text = new TextDecoder().decode(BYTES).replace('"roll":"c"', '"roll":"k"');
    const read = readDayFileLeniently(text);
    expect(read.ok && read.value).toMatchObject({
      stored: FACTS.slice(0, 2),
      damaged: 1,
      missing: 1,
      problems: [{ code: 'fact-changed', line: 4, id: FACTS[2]!.id }],
    });
  });

  test('that was cut, or lost its first line, still has the checks of its entries', () => {
    const lines = new TextDecoder().decode(BYTES).trimEnd().split('\n');
    const changed = lines[2]!.replace('bé', 'cé');
    for (const text of [
      lines.with(2, changed).slice(0, 4).join('\n'),
      lines.with(2, changed).with(0, '{"rollbook":"day-f').join('\n'),
    ]) {
      const read = readDayFileLeniently(text);
      expect(read.ok && read.value.stored).toEqual([FACTS[0], FACTS[2]]);
      expect(read.ok && read.value.unchecked).toBeUndefined();
    }
  });

  test('written by an older app has none: whole it is read, damaged it is said to be unsure', () => {
    const old = sealed(FACTS.map(json));
    const whole = readDayFile(old);
    expect(whole.ok && whole.value.stored).toEqual(FACTS);
    expect(whole.ok && whole.value.unchecked).toBeUndefined();
    const damaged = readDayFileLeniently(old.replace('"roll":"c"', '"roll":"k"'));
    expect(damaged.ok && damaged.value).toMatchObject({ unchecked: true });
    expect(damaged.ok && damaged.value.stored).toHaveLength(3);
  });
});
