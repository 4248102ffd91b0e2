import { describe, expect, test } from 'vitest';
import type { Day } from '../../../src/day/model.ts';
import { canBeOneTake, isJoined, joinsOf } from '../../../src/day/phones/one-take.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { timeOfDayClock } from '../../../src/time/followed-clock.ts';
import { MORNING } from '../say.ts';
import { SetPhone } from '../three-phones.ts';

const SECOND = 1000;
const HOUR = 3_600_000;

interface Rolled {
  /** When it truly rolled, and how far the phone's clock is ahead. */
  readonly atMs: number;
  readonly aheadMs: number;
  readonly isTied: boolean;
  readonly more?: object;
}

/** The take that a phone logs by Roll: its start is the recorder's if it was tied, and its own clock's if not. */
function rolled({ atMs, aheadMs, isTied, more }: Rolled): Draft {
  const shownMs = isTied ? atMs : atMs + aheadMs;
  const { frames, rate } = timeOfDayClock(shownMs, 0, '25');
  const slate = { style: 'lettered' as const, scene: '24', setup: 1 };
  const fields = {
    kind: 'take' as const,
    slate,
    number: 1,
    start: { frames, rate },
    rolledAt: atMs + aheadMs,
  };
  return { kind: 'take-logged', fields: { ...fields, ...more } };
}

/** Two phones log 24A/1, the second so many ms later and with its clock so far ahead. */
function logged(
  { laterMs = 0, aheadMs = 0, tied = [true, true] as readonly boolean[], meet = false },
  more: object = {},
): Day {
  const phones = [new SetPhone(0, 0), new SetPhone(1, aheadMs)];
  for (const [at, phone] of phones.entries()) if (tied[at]) phone.tie(MORNING);
  const [one, other] = phones as [SetPhone, SetPhone];
  if (!tied[1]) other.say({ kind: 'phone-named', name: 'Jon', job: '' }, MORNING);
  if (meet) {
    other.take(one);
    other.say({ kind: 'roll-changed', roll: '1' }, MORNING);
    one.take(other);
    one.say({ kind: 'roll-changed', roll: '2' }, MORNING);
  }
  const atMs = MORNING + HOUR;
  one.say(rolled({ atMs, aheadMs: 0, isTied: tied[0]! }), atMs);
  other.say(rolled({ atMs: atMs + laterMs, aheadMs, isTied: tied[1]!, more }), atMs + laterMs);
  one.take(other);
  return one.day();
}

function isOne(day: Day): boolean {
  const [one, other] = takesInOrder(day);
  const is = canBeOneTake(day, one!, other!);
  expect(canBeOneTake(day, other!, one!)).toBe(is);
  return is;
}

describe('two takes of one number can be one', () => {
  test.each([0, 2 * SECOND, 5 * SECOND])(
    'if their timecodes are %i ms apart, with clocks hours apart',
    (laterMs) => {
      expect(isOne(logged({ laterMs, aheadMs: 3 * HOUR }))).toBe(true);
    },
  );

  test('across midnight of the timecode', () => {
    const before = { start: { frames: 25 * 86_400 - 25, rate: '25' as const }, rolledAt: undefined };
    const after = { start: { frames: 25, rate: '25' as const }, rolledAt: undefined };
    const [one, other] = [new SetPhone(0, 0), new SetPhone(1, 0)];
    one.say(rolled({ atMs: MORNING, aheadMs: 0, isTied: true, more: before }), MORNING);
    other.say(rolled({ atMs: MORNING, aheadMs: 0, isTied: true, more: after }), MORNING);
    one.take(other);
    expect(isOne(one.day())).toBe(true);
  });

  test.each([
    ['neither follows the recorder', [false, false]],
    ['one of them does not', [true, false]],
  ] as const)('if their clocks say so, where %s', (_, tied) => {
    expect(isOne(logged({ tied, laterMs: 3 * SECOND }))).toBe(true);
  });

  test('if their clocks do once they are put right by what the phones share', () => {
    expect(isOne(logged({ tied: [true, false], aheadMs: 2 * HOUR, meet: true, laterMs: 2 * SECOND }))).toBe(
      true,
    );
  });
});

describe('two takes of one number are two', () => {
  test.each([6 * SECOND, 90 * SECOND, 2 * HOUR])('if their timecodes are %i ms apart', (laterMs) => {
    expect(isOne(logged({ laterMs }))).toBe(false);
    // The phones' clocks say the same moment, and are wrong.
    expect(isOne(logged({ laterMs, aheadMs: -laterMs }))).toBe(false);
  });

  test('if their clocks are apart, where no recorder is followed', () => {
    expect(isOne(logged({ tied: [false, false], laterMs: 60 * SECOND }))).toBe(false);
  });

  test('if nothing says when one of them began', () => {
    expect(isOne(logged({}, { start: null, rolledAt: undefined }))).toBe(false);
  });

  test('if one is a wild track, or one phone logged both', () => {
    expect(isOne(logged({}, { kind: 'wild' }))).toBe(false);
    const phone = new SetPhone(0, 0);
    for (const _ of [1, 2]) phone.say(rolled({ atMs: MORNING, aheadMs: 0, isTied: false }), MORNING);
    expect(isOne(phone.day())).toBe(false);
  });
});

test('what made two takes one can be taken back, though both phones said so, each the other way round', () => {
  const [one, other] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  const [first, second] = [one, other].map((phone) =>
    phone.say(rolled({ atMs: MORNING, aheadMs: 0, isTied: false }), MORNING),
  ) as [Fact, Fact];
  one.take(other);
  other.take(one);
  one.say({ kind: 'takes-joined', take: second.id, into: first.id }, MORNING + SECOND);
  other.say({ kind: 'takes-joined', take: first.id, into: second.id }, MORNING + SECOND);
  one.take(other);
  const day = one.day();
  expect(takesInOrder(day)).toHaveLength(1);
  expect(day.line.filter((item) => isJoined(day, item))).toHaveLength(1);
  const targets = joinsOf(day, second.id);
  expect(targets).toHaveLength(2);
  one.say({ kind: 'fact-retracted', targets, by: 'hand' }, MORNING + 2 * SECOND);
  expect(takesInOrder(one.day())).toHaveLength(2);
  expect(joinsOf(one.day(), second.id)).toEqual([]);
  // A take that was removed is not one with another.
  one.say({ kind: 'fact-retracted', targets: [second.id], by: 'hand' }, MORNING + 3 * SECOND);
  const removed = one.day();
  expect(removed.line.some((item) => isJoined(removed, item))).toBe(false);
});
