import { describe, expect, test } from 'vitest';
import type { Take } from '../../../src/day/model.ts';
import type { Logged } from '../../../src/reconcile/log-and-card/logged.ts';
import type { Recorded } from '../../../src/reconcile/log-and-card/recorded.ts';
import { habitsOf } from '../../../src/reconcile/pairing/card-habits.ts';
import {
  CHANCES,
  LEAST_BITS,
  likelihood,
  MARGIN_BITS,
  trackBits,
} from '../../../src/reconcile/pairing/likelihood.ts';
import { orderBits } from '../../../src/reconcile/pairing/order-bits.ts';
import { loggedWith, recordedWith } from '../plain-pair.ts';

const DAY_MS = 86_400_000;
const set = (...words: string[]): ReadonlySet<string> => new Set(words);

/** A card of ten recordings: half of scene 24, a fifth of number 1, half of roll R1. */
const CARD = Array.from({ length: 10 }, (_, at) =>
  recordedWith({ scene: at < 5 ? '24' : `S${at}`, number: 1 + (at % 5), roll: at < 5 ? 'R1' : 'R2' }),
);
const LOG = CARD.map((_, at) => loggedWith({}, { number: 1 + (at % 5) }));
const habits = habitsOf(LOG, CARD);
const bitsOf = (logged: Logged, recorded: Recorded, of = habits): number =>
  Math.round(likelihood(logged, recorded, of, (ms) => ms, DAY_MS) * 10) / 10;

interface Case {
  readonly logged?: Partial<Logged>;
  readonly take?: Partial<Take>;
  readonly recorded: Partial<Recorded>;
}

// log2 of the chance if it is the take's over the chance if it is another's, worked out by hand.
const CASES: readonly (readonly [what: string, bits: number, one: Case])[] = [
  ['the name', 9.2, { logged: { stem: 'A' }, recorded: { stems: set('A') } }],
  ['a name typed by hand', 16.5, { logged: { stem: 'A', nameTyped: true }, recorded: { stems: set('A') } }],
  ['the name but for a mark', 9.2, { logged: { stem: 'A' }, recorded: { shortStems: set('A') } }],
  ['another name', 0, { logged: { stem: 'A' }, recorded: { stems: set('B'), shortStems: set('B') } }],
  ['no name', 0, { recorded: { stems: set(''), shortStems: set('') } }],
  // (5 + 0.5) / 15 of the card is 24: log2(0.9 / 0.367).
  ['the slate of half the card', 1.3, { logged: { scenes: ['24'] }, recorded: { scene: '24' } }],
  // (1 + 0.5) / 15 is 0.1.
  ['the slate of one recording', 3.2, { logged: { scenes: ['S7'] }, recorded: { scene: 'S7' } }],
  ['another slate', -3.2, { logged: { scenes: ['S7'] }, recorded: { scene: '24' } }],
  ['the scene of a numbered slate', 1.2, { logged: { looseScenes: ['24'] }, recorded: { scene: '24' } }],
  // (2 + 0.5) / 15 is 0.167.
  ['the take number', 2.4, { recorded: { number: 1 } }],
  ['another take number', -3.1, { recorded: { number: 2 } }],
  ['a false start', 3, { take: { falseStart: true }, recorded: { types: set('FALSE_START') } }],
  ['no false start', -2.2, { recorded: { types: set('FALSE_START') } }],
  ['a false start the file does not know of', 0, { take: { falseStart: true }, recorded: {} }],
  ['room tone, wild to a file', 3, { take: { kind: 'tone' }, recorded: { types: set('WILD_TRACK') } }],
  ['no pickup', -2.2, { recorded: { types: set('PICKUP') } }],
  [
    'a false start of no pickup',
    -2.2,
    { take: { falseStart: true }, recorded: { types: set('PICKUP', 'FALSE_START') } },
  ],
  ['a word that says nothing of it', 0, { recorded: { types: set('REHEARSAL') } }],
  ['the roll', 1.2, { logged: { roll: 'R1' }, recorded: { roll: 'R1' } }],
  ['another roll', -2.1, { logged: { roll: 'R1' }, recorded: { roll: 'R2' } }],
  ['a roll of one of them', 0, { logged: { roll: 'R1' }, recorded: {} }],
];

describe('what evidence is worth', () => {
  test.each(CASES)('%s: %f bits', (_, bits, { logged, take, recorded }) => {
    expect(bitsOf(loggedWith(logged, take), recordedWith(recorded))).toBe(bits);
  });

  test.each([
    [0, 13.9],
    [1, 12.5],
    [2, 11.1],
    [8, 6.7],
    [20, 4.5],
    [60, -2.3],
    [255, -4.3],
    [-2, 11.1],
  ])('a start %i s apart: %f bits', (seconds, bits) => {
    const logged = loggedWith({ startMs: 1000 });
    const startMs = (DAY_MS + 1000 + seconds * 1000) % DAY_MS;
    expect(bitsOf(logged, recordedWith({ startMs }))).toBe(bits);
  });

  test.each([
    [0, 5.5],
    [1, 4.1],
    [3, 1.6],
    [30, -3],
    [600, -3.3],
    [-1, 4.1],
  ])('a length %i s apart: %f bits', (seconds, bits) => {
    const recorded = recordedWith({ lengthMs: 900_000 + seconds * 1000 });
    expect(bitsOf(loggedWith({ lengthMs: 900_000 }), recorded)).toBe(bits);
  });

  test('a start or length of one of them says nothing', () => {
    expect(bitsOf(loggedWith({ startMs: 0, lengthMs: 0 }), recordedWith())).toBe(0);
    expect(bitsOf(loggedWith(), recordedWith({ startMs: 0, lengthMs: 0 }))).toBe(0);
  });

  test('names of tracks that change over the card count up to three for and four against', () => {
    expect([trackBits(1, 0), trackBits(9, 0), trackBits(0, 1), trackBits(0, 9), trackBits(2, 1)]).toEqual([
      0.7,
      3,
      -1,
      -4,
      expect.closeTo(0.4),
    ]);
  });

  test('every chance is one', () => {
    for (const chance of Object.values(CHANCES).flatMap((one) => Object.values(one))) {
      expect(chance).toBeGreaterThan(0);
      expect(chance).toBeLessThan(1);
    }
  });
});

describe('a field that never changes over the card', () => {
  const same = CARD.map((one) => ({ ...one, scene: 'T', roll: '20261007', number: 1 }));
  const of = habitsOf(LOG, same);

  test.each([
    ['fits', { scenes: ['T'], roll: '20261007' }],
    ['does not fit', { scenes: ['24'], roll: 'R1' }],
  ])('says nothing where it %s', (_, logged) => {
    expect(bitsOf(loggedWith(logged, { number: 1 }), same[0]!, of)).toBe(0);
    expect(bitsOf(loggedWith(logged, { number: 4 }), same[0]!, of)).toBe(0);
  });

  test('does not change by a file of another unit', () => {
    const most = habitsOf(LOG, [...same, ...same, recordedWith({ scene: 'X9', number: 7 })]);
    expect(bitsOf(loggedWith({ scenes: ['24'] }), same[0]!, most)).toBe(0);
    expect(bitsOf(loggedWith({ scenes: ['24'] }), recordedWith({ scene: 'X9' }), most)).toBeLessThan(-2);
  });

  test('is a counter too that runs through all slates, unless the log counts so', () => {
    const running = CARD.map((one, at) => ({ ...one, number: at + 1 }));
    const five = loggedWith({}, { number: 5 });
    expect(bitsOf(five, recordedWith({ number: 5 }), habitsOf(LOG, running))).toBe(0);
    const counted = CARD.map((_, at) => loggedWith({}, { number: at + 1 }));
    expect(bitsOf(five, recordedWith({ number: 5 }), habitsOf(counted, running))).toBeGreaterThan(2);
  });

  test('of two recordings is no habit', () => {
    const two = habitsOf(LOG.slice(0, 2), same.slice(0, 2));
    expect(bitsOf(loggedWith({ scenes: ['24'] }), recordedWith({ scene: 'T' }), two)).toBeLessThan(-2);
  });
});

describe('order where no clock tells the time', () => {
  const even = (rows: number, columns: number, weight: number) =>
    Array.from({ length: rows }, () => Array.from({ length: columns }, () => weight));

  test('tells two takes that are alike from one another', () => {
    const [[first, crossed], [other, second]] = orderBits(even(2, 2, 5)) as [
      [number, number],
      [number, number],
    ];
    expect(first).toBeGreaterThan(0.5);
    expect(second).toBeCloseTo(first);
    expect(crossed).toBeLessThan(-3);
    expect(other).toBeCloseTo(crossed);
  });

  test('says nothing of one take and many files', () => {
    for (const bits of orderBits(even(1, 22, 5))[0]!) expect(Math.abs(bits)).toBeLessThan(0.1);
  });

  test('weighs long cards without running over, and places what lies between sure pairs', () => {
    const weights = even(300, 300, -3).map((row, at) =>
      row.map((weight, other) => (at === other ? 12 : weight)),
    );
    weights[150]![150] = -3;
    const bits = orderBits(weights);
    expect(bits.flat().every(Number.isFinite)).toBe(true);
    expect(bits[150]![150]! - bits[150]![151]!).toBeGreaterThan(2);
  });
});

describe('the relations that matter', () => {
  const start = { startMs: 0, lengthMs: 60_000 };
  const wrong = { scenes: ['S7'] };

  test('a fitting start and length outweigh a wrong slate and number', () => {
    const bits = bitsOf(
      loggedWith({ ...start, ...wrong }),
      recordedWith({ ...start, scene: '24', number: 9 }),
    );
    expect(bits).toBeGreaterThan(LEAST_BITS + MARGIN_BITS);
  });

  test('a slate and number alone are a pair, and no question', () => {
    const bits = bitsOf(
      loggedWith({ scenes: ['S7'] }, { number: 3 }),
      recordedWith({ scene: 'S7', number: 3 }),
    );
    expect(bits).toBeGreaterThan(LEAST_BITS + MARGIN_BITS);
  });

  test('a name with slate and number outweighs a start and a length that are astray', () => {
    const logged = loggedWith({ startMs: 0, lengthMs: 60_000, stem: 'A', scenes: ['S7'] }, { number: 3 });
    const astray = { startMs: 9_000_000, lengthMs: 600_000, stems: set('A'), scene: 'S7', number: 3 };
    expect(bitsOf(logged, recordedWith(astray))).toBeGreaterThan(LEAST_BITS + MARGIN_BITS);
  });

  test('without any of these nothing is a pair', () => {
    expect(bitsOf(loggedWith({ scenes: ['S7'] }), recordedWith({ scene: '24', number: 1 }))).toBeLessThan(
      LEAST_BITS,
    );
  });
});
