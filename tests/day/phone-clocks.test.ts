import { describe, expect, test } from 'vitest';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import { phoneClocks } from '../../src/day/phone-clocks.ts';
import { clockRemarks } from '../../src/day/phones/clock-remarks.ts';
import { fieldConflicts } from '../../src/day/phones/field-conflicts.ts';
import { SaidOrder } from '../../src/day/said-order.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { factId } from '../../src/shared/ids.ts';
import { MORNING, take } from './say.ts';
import { SetPhone } from './three-phones.ts';

const SECOND = 1000;
const HOUR = 3_600_000;
const FRAME = 40;
const DAY_FRAMES = 24 * 3600 * 25;

/** A fact said by a phone at a moment of its clock, with what it knew of the other. */
const said = (phone: 'phonea' | 'phoneb', counter: number, at: number, draft: Draft, seen?: number): Fact =>
  ({
    id: factId(counter, `${phone}00000`),
    day: 'day-1',
    at,
    zone: 0,
    ...draft,
    ...(seen !== undefined && { seen: { [phone === 'phonea' ? 'phoneb' : 'phonea']: seen } }),
  }) as Fact;
const roll: Draft = { kind: 'roll-changed', roll: '7A' };
const tie = (frames: number, atMs: number, rate: '25' | '24' = '25'): Draft => ({
  kind: 'clock-followed',
  frames,
  rate,
  atMs,
});
const rolled = (rolledAt: number, frames: number, more: object = {}): Draft =>
  take('24', 1, 1, { rolledAt, start: { frames, rate: '25' }, ...more });
const clockOf = (...facts: Fact[]) => phoneClocks(facts).get('phoneb');

describe('the clock of a second phone', () => {
  test('is believed where nothing tells, to five seconds, and that of the first without a doubt', () => {
    const facts = [said('phonea', 1, 0, roll), said('phoneb', 2, 0, roll)];
    expect(phoneClocks(facts).get('phonea')).toEqual({ offset: 0, how: 'none', doubt: 0 });
    expect(clockOf(...facts)).toEqual({ offset: 0, how: 'none', doubt: 5000 });
  });

  // 01:00:00:00 at 25 is frame 90,000.
  test.each([
    ['a second later', 90_025, 0, SECOND],
    ['a second earlier', 89_975, 0, -SECOND],
    ['ten seconds on, as was shown', 90_250, 10 * SECOND, 0],
    ['half a day later', 90_000 + DAY_FRAMES / 2, 0, 12 * HOUR],
    ['a frame more, which is less than half a day earlier', 90_001 + DAY_FRAMES / 2, 0, FRAME - 12 * HOUR],
  ])('is told by the timecode that both follow: %s', (_, frames, atMs, offset) => {
    const clock = clockOf(said('phonea', 1, 0, tie(90_000, 0)), said('phoneb', 2, 0, tie(frames, atMs)));
    expect(clock).toEqual({ offset, how: 'timecode', doubt: 1000 });
  });

  test('is told by the latest tie of each, and by none at another rate', () => {
    const ties = [
      said('phonea', 1, 0, tie(10, 0)),
      said('phoneb', 2, 0, tie(99, 0)),
      said('phonea', 3, 0, tie(90_000, 0)),
      said('phoneb', 4, 0, tie(90_025, 0)),
    ];
    expect(clockOf(...ties)?.offset).toBe(SECOND);
    expect(clockOf(...ties, said('phoneb', 5, 0, tie(90_025, 0, '24')))?.how).toBe('none');
    expect(clockOf(ties[0]!, said('phoneb', 2, 0, roll))?.how).toBe('none');
  });

  test('is told by a take that both logged, whose starts are two seconds apart at most, also over midnight', () => {
    const both = (one: Draft, other: Draft) => {
      const clock = clockOf(said('phonea', 1, 0, one), said('phoneb', 2, 0, other));
      return clock?.how === 'take' ? clock.offset : clock?.how;
    };
    expect(clockOf(said('phonea', 1, 0, rolled(9000, 100)), said('phoneb', 2, 0, rolled(2000, 100)))).toEqual(
      {
        offset: 7000,
        how: 'take',
        doubt: 3000,
      },
    );
    expect(both(rolled(9000, 100), rolled(2000, 150))).toBe(7000);
    expect(both(rolled(9000, 100), rolled(2000, 50))).toBe(7000);
    expect(both(rolled(9000, 100), rolled(2000, 151))).toBe('none');
    expect(both(rolled(9000, 100), rolled(2000, 49))).toBe('none');
    expect(both(rolled(9000, DAY_FRAMES - 25), rolled(2000, 25))).toBe(7000);
    expect(both(rolled(9000, DAY_FRAMES - 25), rolled(2000, 26))).toBe('none');
    for (const more of [
      { number: 2 },
      { kind: 'pickup' },
      { start: null },
      { start: { frames: 100, rate: '24' } },
    ])
      expect(both(rolled(9000, 100), rolled(2000, 100, more))).toBe('none');
    expect(
      both(rolled(9000, 100), take('24', 2, 1, { rolledAt: 2000, start: { frames: 100, rate: '25' } })),
    ).toBe('none');
    expect(both(rolled(9000, 100), take('24', 1, 1, { start: { frames: 100, rate: '25' } }))).toBe('none');
  });

  test('is told by the median of the takes, and by none that one knew of when it logged its own', () => {
    const takes = [1000, 50_000, 2000].flatMap((late, at) => [
      said('phonea', 2 * at + 1, 0, rolled(late, 1000 * at, { number: at + 1 })),
      said('phoneb', 2 * at + 2, 0, rolled(0, 1000 * at, { number: at + 1 })),
    ]);
    expect(clockOf(...takes)?.offset).toBe(2000);
    expect(clockOf(...takes.slice(0, 4))?.offset).toBe(50_000);
    const known = said('phoneb', 2, 0, rolled(0, 0), 1);
    expect(clockOf(said('phonea', 1, 0, rolled(1000, 0)), known)?.how).toBe('none');
    const knowing = said('phonea', 2, 0, rolled(1000, 0), 1);
    expect(clockOf(said('phonea', 0, 0, roll), said('phoneb', 1, 0, rolled(0, 0)), knowing)?.how).toBe(
      'none',
    );
  });

  test('is put right where it said something before what it knew, or what was known of it', () => {
    const heard = clockOf(said('phonea', 1, 9000, roll), said('phoneb', 2, 2000, roll, 1));
    expect(heard).toEqual({ offset: 7000, how: 'exchange', doubt: 120_000 });
    const told = clockOf(
      said('phonea', 1, 0, roll),
      said('phoneb', 2, 9000, roll),
      said('phonea', 3, 2000, roll, 2),
    );
    expect(told).toEqual({ offset: -7000, how: 'exchange', doubt: 120_000 });
    const fits = clockOf(said('phonea', 1, 2000, roll), said('phoneb', 2, 9000, roll, 1));
    expect(fits?.how).toBe('none');
  });

  test('is put right by the last that it knew, each time that it had heard more', () => {
    const of = (...seen: number[]) =>
      clockOf(
        said('phonea', 1, 1000, roll),
        said('phonea', 3, 5000, roll),
        said('phonea', 5, 6000, roll),
        ...seen.map((counter, at) => said('phoneb', 6 + at, 100 * at, roll, counter)),
      )?.offset;
    expect([of(1), of(2), of(3), of(4), of(5)]).toEqual([1000, 1000, 5000, 5000, 6000]);
    expect([of(1, 1), of(1, 3), of(3, 5), of(0, 3)]).toEqual([1000, 4900, 5900, 4900]);
  });

  test('is as found where what was known cannot be true for both', () => {
    const clock = clockOf(
      said('phonea', 1, 9000, roll),
      said('phoneb', 2, 2000, roll, 1),
      said('phonea', 3, 3000, roll, 2),
    );
    // 7 seconds at least, and one second at most.
    expect(clock).toEqual({ offset: 0, how: 'none', doubt: 5000 });
  });

  test('says nothing of a clock of another day: more than twelve hours off', () => {
    const off = (ms: number) =>
      clockOf(said('phonea', 1, 0, rolled(ms, 0)), said('phoneb', 2, 0, rolled(0, 0)));
    expect(off(12 * HOUR)).toMatchObject({ offset: 12 * HOUR, how: 'take' });
    expect(off(12 * HOUR + 1)).toEqual({ offset: 0, how: 'none', doubt: 5000 });
    expect(off(-12 * HOUR)).toMatchObject({ offset: -12 * HOUR, how: 'take' });
    expect(off(-12 * HOUR - 1)).toEqual({ offset: 0, how: 'none', doubt: 5000 });
  });

  test('is held against the phone that spoke first', () => {
    const facts = [
      said('phonea', 1, 0, tie(90_000, 0)),
      said('phoneb', 2, 0, tie(90_025, 0)),
      { ...said('phonea', 3, 0, tie(90_100, 0)), id: factId(3, 'phonec00000') } as Fact,
    ];
    expect([...phoneClocks(facts)].map(([phone, { offset }]) => [phone, offset])).toEqual([
      ['phonea', 0],
      ['phoneb', 1000],
      ['phonec', 4000],
    ]);
  });
});

describe('when things were said', () => {
  test('never goes back on one phone, and is never before what was known', () => {
    const facts = [
      said('phonea', 1, 5000, roll),
      said('phonea', 2, 3000, roll),
      said('phonea', 4, 8000, roll),
      said('phoneb', 5, 6000, roll, 2),
      said('phoneb', 6, 5000, roll, 3),
    ];
    const order = new SaidOrder(facts);
    expect(facts.map(({ id }) => order.timeOf(id))).toEqual([5000, 5000, 8000, 6000, 6000]);
    expect(order.timeOf('none')).toBe(0);
  });

  test('is in doubt by what both clocks are in doubt', () => {
    const [one, two] = [said('phonea', 1, 0, roll), said('phoneb', 2, 0, roll)];
    const order = new SaidOrder([one, two]);
    expect([
      order.doubtBetween(one, two),
      order.doubtBetween(two, two),
      order.doubtBetween(one, one),
    ]).toEqual([5000, 10_000, 0]);
  });

  test('a fact is last where its phone is known, knows all, ties no clock and is not earlier', () => {
    const order = new SaidOrder([said('phonea', 1, 1000, roll), said('phoneb', 2, 2000, roll)]);
    const isLast = (at: number, seen: number | undefined, draft: Draft = roll, id = 'phonea') =>
      order.isLast({ ...said('phonea', 3, at, draft, seen), id: factId(3, `${id}00000`) } as Fact);
    expect(isLast(2000, 2)).toBe(true);
    expect(isLast(1999, 2)).toBe(false);
    expect(isLast(2000, 1)).toBe(false);
    expect(isLast(2000, undefined)).toBe(false);
    expect(isLast(2000, 2, tie(0, 0))).toBe(false);
    expect(isLast(2000, 2, roll, 'phonec')).toBe(false);
  });
});

test('facts that are added out of the order of their ids are folded as all at once', () => {
  const [one, two, three] = [1, 2, 3].map((counter) =>
    said('phonea', counter, counter * SECOND, take('24', 1, counter)),
  ) as [Fact, Fact, Fact];
  for (const added of [
    appendFacts(foldDay('day-1', [one]), [three, two]),
    appendFacts(foldDay('day-1', [one, three]), [two]),
    appendFacts(foldDay('day-1', []), [two, one, three]),
  ]) {
    expect([...added.takes.values()].map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(added.facts.map(({ id }) => id)).toEqual([one, two, three].map(({ id }) => id));
  }
});

describe('a clock that was set', () => {
  test('is remarked on above a minute, back or ahead', () => {
    const remarks = (at: number, ahead?: number) => {
      const later = { ...said('phonea', 2, at, roll), ...(ahead !== undefined && { ahead }) } as Fact;
      return clockRemarks(foldDay('day-1', [said('phonea', 1, MORNING, roll), later])).map((remark) =>
        'ms' in remark ? [remark.kind, remark.ms] : [remark.kind],
      );
    };
    expect(remarks(MORNING - 60_000)).toEqual([]);
    expect(remarks(MORNING - 60_001)).toEqual([['set-back', 60_001]]);
    expect(remarks(MORNING, 60_000)).toEqual([]);
    expect(remarks(MORNING, 60_001)).toEqual([['set-ahead', 60_001]]);
  });

  test('is each phone’s own', () => {
    const facts = [said('phonea', 1, MORNING, roll), said('phoneb', 2, MORNING - HOUR, roll)];
    expect(clockRemarks(foldDay('day-1', facts))).toEqual([]);
  });
});

describe('what two phones describe differently', () => {
  const found = (one: Draft, other: Draft): string[] => {
    const phones = [new SetPhone(0, 0), new SetPhone(1, 0)] as const;
    const id = phones[0].say(take('24', 1, 1), MORNING).id;
    phones[1].take(phones[0]);
    const of = (draft: Draft): Draft => ('take' in draft ? { ...draft, take: id } : draft);
    phones[0].say(of(one), MORNING + SECOND);
    phones[1].say(of(other), MORNING + 2 * SECOND);
    phones[0].take(phones[1]);
    return fieldConflicts(phones[0].day()).map(({ of: what, field, by }) => `${what} ${field} ${by.length}`);
  };
  const length = (frames: number): Draft => ({
    kind: 'take-described',
    take: '',
    fields: { length: { frames, rate: '25' } },
  });
  const marked = (fields: object): Draft => ({ kind: 'take-described', take: '', fields });

  test('is a length where it differs by more than three seconds', () => {
    expect(found(length(100), length(175))).toEqual([]);
    expect(found(length(100), length(176))).toEqual(['take length 2']);
    expect(found(length(176), length(100))).toEqual(['take length 2']);
    expect(found(length(100), marked({ length: null }))).toEqual(['take length 2']);
  });

  test('is a mark, circled or no good or neither, and nothing of the moment of a tap', () => {
    expect(found(marked({ circled: true }), marked({ noGood: true }))).toEqual(['take mark 2']);
    expect(found(marked({ circled: true }), marked({ circled: false }))).toEqual(['take mark 2']);
    expect(found(marked({ noGood: false }), marked({ circled: false }))).toEqual([]);
    expect(found(marked({ noGood: true }), marked({ noGood: false }))).toEqual(['take mark 2']);
    for (const field of ['rolledAt', 'cutAt'])
      expect(found(marked({ [field]: 1 }), marked({ [field]: 2 }))).toEqual([]);
    expect(found(marked({ start: { frames: 1, rate: '25' } }), marked({ start: null }))).toEqual([]);
  });

  test('is the day, a voice and a part, laid or described', () => {
    const day = (mixer: string): Draft => ({ kind: 'day-described', fields: { mixer } });
    const voice = (part: string): Draft => ({ kind: 'voice-described', voice: 'v', fields: { part } });
    const part = (name: string): Draft => ({ kind: 'part-described', part: 'p', fields: { name } });
    const laid = (name: string): Draft => ({ kind: 'rig-laid', parts: [{ part: 'p', fields: { name } }] });
    expect(found(day('A'), day('B'))).toEqual(['day mixer 2']);
    expect(found(day('A'), day('A'))).toEqual([]);
    expect(found(voice('A'), voice('B'))).toEqual(['voice part 2']);
    expect(found(part('A'), laid('B'))).toEqual(['part name 2']);
    expect(found({ kind: 'roll-changed', roll: '1' }, { kind: 'roll-changed', roll: '2' })).toEqual([]);
  });
});
