import { describe, expect, test } from 'vitest';
import {
  ADMIT_LIMITS,
  type Admitted,
  admit,
  type HeldDay,
  heldAfter,
} from '../../../src/facts/day-file/admit.ts';
import { readDayFile, writeDayFile } from '../../../src/facts/day-file/day-file.ts';
import type { DayFile } from '../../../src/facts/day-file/day-file-facts.ts';
import type { Envelope } from '../../../src/facts/kinds/envelope.ts';
import { factId } from '../../../src/shared/ids.ts';
import { DAY, envelopeOf } from '../day-file-samples.ts';

const NOW = 1_791_360_000_000;
const roll = (counter: number, value: string, more: object = {}): Envelope =>
  envelopeOf(counter, 'roll-changed', { roll: value, ...more });
const held = (stored: readonly Envelope[], unsure: readonly Envelope[] = []): HeldDay => ({
  stored,
  unsure: new Set(unsure.map(({ id }) => id)),
});
const whole = (facts: readonly Envelope[]): DayFile => {
  const read = readDayFile(writeDayFile(DAY, '', facts));
  if (!read.ok) throw new Error(read.problem.code);
  return read.value;
};
/** As salvage gives it of a file that has no checks. */
const unchecked = (facts: readonly Envelope[]): DayFile => ({ ...whole(facts), unchecked: true });
const admitted = (...what: Parameters<typeof admit>): Admitted => {
  const result = admit(...what);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const [a, b, c] = [roll(1, 'a'), roll(2, 'b'), roll(3, 'c')];
const changed = roll(2, 'x');

describe('what a file does to a day', () => {
  test('a good file mends what a damaged one without checks had brought, and is not refused', () => {
    const salvaged = admitted(held([]), unchecked([a, changed]), NOW);
    expect(salvaged).toMatchObject({ fresh: [a, changed], mended: [] });
    const after = heldAfter(held([]), salvaged);
    expect(after.unsure).toEqual(new Set([a.id, b.id]));
    const good = admitted(after, whole([a, b, c]), NOW);
    expect(good).toMatchObject({ fresh: [c], mended: [b], same: 1, leftOut: [] });
    expect(good.unsure.size).toBe(0);
    expect(heldAfter(after, good).stored).toEqual([a, b, c]);
  });

  test('a damaged file without checks takes the place of nothing, whole or not, unless somebody says so', () => {
    for (const day of [held([a, b]), held([a, b], [a, b])]) {
      expect(admit(day, unchecked([a, changed, c]), NOW)).toMatchObject({
        problem: { code: 'fact-id-twice', ids: [b.id] },
      });
      const came = admitted(day, unchecked([a, changed, c]), NOW, 'here');
      expect(came).toMatchObject({ fresh: [c], mended: [], leftOut: [b.id] });
      expect(heldAfter(day, came).stored).toEqual([a, b, c]);
    }
    const chosen = admitted(held([a, b]), unchecked([a, changed]), NOW, 'file');
    expect(chosen).toMatchObject({ mended: [changed], unsure: new Set([b.id]) });
  });

  test('two bodies that nobody can tell apart are refused with both, until it is said which stands', () => {
    const day = held([a, b]);
    expect(admit(day, whole([a, changed, c]), NOW)).toEqual({
      ok: false,
      problem: { code: 'fact-id-twice', ids: [b.id], disputes: [{ here: b, there: changed }] },
    });
    expect(admitted(day, whole([a, changed, c]), NOW, 'here')).toMatchObject({
      fresh: [c],
      mended: [],
      leftOut: [b.id],
    });
    expect(admitted(day, whole([a, changed, c]), NOW, 'file')).toMatchObject({
      fresh: [c],
      mended: [changed],
      leftOut: [],
    });
  });
});

describe('limits at the door', () => {
  const refusal = (facts: readonly Envelope[], here: readonly Envelope[] = []) => {
    const result = admit(held(here), whole(facts), NOW);
    return result.ok ? null : result.problem;
  };

  test('a counter that would leave no room for a lifetime of actions is refused, as id and as what was seen', () => {
    expect(refusal([roll(ADMIT_LIMITS.counter, 'a')])).toBe(null);
    expect(refusal([roll(ADMIT_LIMITS.counter + 1, 'a')])).toMatchObject({ code: 'admit-counter' });
    const seen = { phoneb: ADMIT_LIMITS.counter + 1 };
    expect(refusal([roll(1, 'a', { seen })])).toMatchObject({ code: 'admit-counter' });
    // A hundred thousand actions a day for a hundred years are fewer than what is left up to what is read.
    expect(500_000_000 - ADMIT_LIMITS.counter).toBeGreaterThan(100_000 * 100);
  });

  test('an entry dated years after the phone is refused: it would hold back everything said later', () => {
    expect(refusal([roll(1, 'a', { at: NOW + ADMIT_LIMITS.aheadMs })])).toBe(null);
    expect(refusal([roll(1, 'a', { at: NOW + ADMIT_LIMITS.aheadMs + 1 })])).toEqual({
      code: 'admit-date',
      atMs: NOW + ADMIT_LIMITS.aheadMs + 1,
      nowMs: NOW,
    });
  });

  test('more phones, or more entries with those here, than a file may have later are refused', () => {
    const ofPhones = (count: number): Envelope[] =>
      Array.from({ length: count }, (_, at) => ({
        ...roll(at + 1, 'a'),
        id: factId(at + 1, `ph${String(at).padStart(4, '0')}00000`),
      }));
    expect(refusal(ofPhones(ADMIT_LIMITS.databases))).toBe(null);
    expect(refusal(ofPhones(ADMIT_LIMITS.databases), [a])).toMatchObject({ code: 'admit-databases' });
    const many = Array.from({ length: ADMIT_LIMITS.facts }, (_, at) => roll(at + 10, 'a'));
    expect(refusal([b], many)).toMatchObject({ code: 'admit-facts', count: ADMIT_LIMITS.facts + 1 });
    const long = Array.from({ length: 8 }, (_, at) => roll(at + 10, 'a', { more: 'x'.repeat(3_900_000) }));
    expect(refusal(long.slice(0, 4), long.slice(4))).toMatchObject({ code: 'admit-size' });
  });

  test('what is known already is not measured again: a day that is past a limit here can still be sent and mended', () => {
    const high = roll(ADMIT_LIMITS.counter + 5, 'a');
    expect(admitted(held([high]), whole([high]), NOW)).toMatchObject({ fresh: [], same: 1 });
  });
});
