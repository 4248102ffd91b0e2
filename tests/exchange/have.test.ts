import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readHave, writeHave } from '../../src/exchange/codes/have-code.ts';
import { haveOf, lackedBy, nothingHeld } from '../../src/exchange/have.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { factId } from '../../src/shared/ids.ts';

/** A note that one window of a database wrote with this counter. */
const note = (counter: number, database = 'phonea', window = '00000'): Envelope =>
  ({
    ...{ id: factId(counter, `${database}${window}`), day: 'day-1', v: 1, at: counter, zone: 0 },
    ...{ kind: 'note-added', take: '000001-phonea00000', text: `note ${counter}` },
  }) as Envelope;

const notes = (from: number, to: number, database?: string): Envelope[] =>
  Array.from({ length: to - from + 1 }, (_, at) => note(from + at, database));

/** What one phone gives another, having read what it has off its code. */
const given = (reader: readonly Envelope[], giver: readonly Envelope[]): string[] =>
  lackedBy(readHave(writeHave(haveOf('day-1', 'phonea', reader)))!, giver).map(({ id }) => id);

const idsOf = (facts: readonly Envelope[]): string[] => facts.map(({ id }) => id);

describe('what one phone lacks', () => {
  test('is what came after what it has', () => {
    expect(given(notes(1, 40), notes(1, 45))).toEqual(idsOf(notes(41, 45)));
    expect(given(notes(1, 40), notes(1, 40))).toEqual([]);
  });

  test('is everything of a phone it never heard, and everything where it has nothing', () => {
    const [ours, theirs] = [notes(1, 5), notes(3, 9, 'phoneb')];
    expect(given(ours, [...ours, ...theirs])).toEqual(idsOf(theirs));
    expect(idsOf(lackedBy(nothingHeld('phonec'), ours))).toEqual(idsOf(ours));
  });

  test('is found in a hole below its highest counter', () => {
    const all = notes(1, 40);
    expect(given(all.toSpliced(6, 1), all)).toContain(all[6]!.id);
  });

  test('is found where another window used the same counter', () => {
    const both = [...notes(1, 9), note(7, 'phonea', '11111')];
    expect(given(notes(1, 9), both)).toContain(both[9]!.id);
  });

  test('is found where an entry differs under one id', () => {
    const changed = { ...note(4), text: 'another' };
    expect(given(notes(1, 9), [...notes(1, 3), changed, ...notes(5, 9)])).toContain(changed.id);
  });

  test('is hardly more than it lacks where it is ahead itself', () => {
    const repeated = given(notes(1, 440), notes(1, 400)).length;
    expect(repeated).toBeLessThanOrEqual(40);
  });

  test('is never missed, whatever either has', () => {
    const some = fc.uniqueArray(
      fc.tuple(
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('phonea', 'phoneb', 'phonec'),
        fc.constantFrom('00000', '11111'),
      ),
      { selector: String, maxLength: 120 },
    );
    fc.assert(
      fc.property(some, some, (one, other) => {
        const [reader, giver] = [one, other].map((all) => all.map((said) => note(...said)));
        const held = new Set(idsOf(reader!));
        const coming = new Set(given(reader!, giver!));
        for (const id of idsOf(giver!)) expect(held.has(id) || coming.has(id)).toBe(true);
      }),
    );
  });
});

describe('what a phone has, as a code', () => {
  test('is as it was, by way of the text', () => {
    const have = haveOf('day-1', 'phonea', [...notes(1, 90), ...notes(7, 30, '00000b')]);
    expect(readHave(writeHave(have))).toEqual(have);
    expect(readHave(writeHave(nothingHeld('phonea')))).toEqual(nothingHeld('phonea'));
  });

  // ISO/IEC 18004: version 20 at level L holds 1,249 characters.
  test('stays one that is easily read, with many phones and entries', () => {
    const phones = Array.from({ length: 70 }, (_, at) => `phon${at + 10}`);
    const many = phones.flatMap((phone) => notes(1, 30, phone));
    const have = haveOf('d'.padEnd(20, 'x'), 'phonea', [...many, ...notes(1, 3000)]);
    expect(writeHave(have).length).toBeLessThanOrEqual(1249);
    expect(writeHave(haveOf('day-1', 'phonea', notes(1, 10_000))).length).toBeLessThanOrEqual(1249);
  });

  test('is no other code, nor one cut short', () => {
    expect(readHave('')).toBeNull();
    expect(readHave(writeHave(haveOf('day-1', 'phonea', notes(1, 9))).slice(0, -3))).toBeNull();
  });
});
