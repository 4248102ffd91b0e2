import { describe, expect, test } from 'vitest';
import type { Move } from '../../../src/plan/moves.ts';
import type { PlanExact } from '../../../src/plan/search/best-chains.ts';
import type { Plan } from '../../../src/plan/setup/plan-next-setup.ts';
import { additionWords, betterWords, proofWords, whatIfWords } from '../../../src/ui/plan/words.ts';
import { speaker } from '../../day/say.ts';

const ORDERS = ['leftOut', 'ganged', 'packs', 'bench', 'newTracks'] as const;

/** Proven in so many of the orders, most important first. */
const provenIn = (count: number): PlanExact =>
  Object.fromEntries(ORDERS.map((order, at) => [order, at < count])) as unknown as PlanExact;

const move = (transmitter: string): Move => ({
  kind: 'fit',
  transmitter,
  to: 'ines',
  because: { code: 'has-no-pack', voice: 'ines' },
});

const NO_COST = { leftOut: [0], ganged: [0], packs: 0, bench: 0, newTracks: 0, extras: 0 };

const plan = (part: { out?: number; ganged?: number; moves?: number; proven?: number }): Plan => ({
  moves: Array.from({ length: part.moves ?? 0 }, (_value, at) => move(`A${at}`)),
  recorded: Array.from({ length: part.ganged ?? 0 }, (_value, at) => ({
    voice: `voice${at}`,
    source: 'ch1',
    path: 'path1',
    input: 'in1',
    track: 'tr2',
    gangedWith: ['somebody'],
    keepsTrack: true,
  })),
  leftOut: Array.from({ length: part.out ?? 0 }, (_value, at) => ({
    voice: `out${at}`,
    why: { code: 'no-track-left' } as const,
  })),
  cost: NO_COST,
  bound: NO_COST,
  exact: provenIn(part.proven ?? 5),
  effort: 1,
});

describe('what is proven of a plan', () => {
  test.each([
    [5, 'Proven: nobody else can be recorded, and no better plan exists.'],
    [
      4,
      'Proven: nobody else can be recorded, with the fewest changes; more may be able to keep their track.',
    ],
    [
      3,
      'Proven: nobody else can be recorded, with the fewest packs moved; fewer other changes may be possible.',
    ],
    [2, 'Proven: nobody else can be recorded; fewer packs to move may be possible.'],
    [1, 'Proven: nobody else can be recorded; fewer in gangs may be possible.'],
    [0, 'A good plan, not proven; one that records more people may exist.'],
  ])('is said where some are left out and %i of the five orders are proven', (proven, words) => {
    expect(proofWords(plan({ out: 2, proven }), false)).toBe(words);
  });

  test('needs no proof that everybody is recorded', () => {
    expect(proofWords(plan({}), false)).toBe('Proven: no better plan exists.');
    expect(proofWords(plan({ proven: 2 }), false)).toBe(
      'Everyone is recorded; fewer packs to move may be possible.',
    );
  });

  test('waits while a better one is looked for', () => {
    expect(proofWords(plan({ out: 2, proven: 3 }), true)).toBe('A first plan; looking for a better one…');
  });
});

describe('a better plan', () => {
  test.each([
    ['A better plan leaves out 3, not 8.', { out: 3, ganged: 4, moves: 9 }, { out: 8 }],
    ['A better plan has 2 in gangs, not 4.', { ganged: 2, moves: 9 }, { ganged: 4 }],
    ['A better plan takes 1 move, not 2.', { moves: 1 }, { moves: 2 }],
    ['There is a better plan.', { moves: 3 }, { moves: 2 }],
  ])('%s', (words, better, shown) => {
    expect(betterWords(plan(better), plan(shown))).toBe(words);
  });
});

const phone = speaker();
phone.say({ kind: 'voice-described', voice: 'dora', fields: { part: 'Dora' } });
const day = phone.day();

test('what would help is said in one line from the start, whatever it is', () => {
  expect(additionWords(day, undefined)).toBe('Working out whether one more pack or input would help…');
  expect(additionWords(day, { kind: 'input', voices: ['dora'] })).toBe('One more input would record Dora.');
  expect(additionWords(day, 'none')).toBe('One more pack, channel, input or track would not help by itself.');
});

describe('what if', () => {
  const answer = {
    plan: plan({}),
    isRecorded: true,
    moreMoves: [move('A1'), move('A2'), move('A3')],
    fewerMoves: [move('A4')],
    pushedOut: ['dora'],
    pushedIntoGang: [],
  };

  test('says how many moves more, those that fall away set against those that come on top', () => {
    expect(whatIfWords(day, answer)).toBe('2 more moves, Dora left out');
    expect(whatIfWords(day, { ...answer, moreMoves: [move('A1')], pushedOut: [] })).toBe('no more moves');
  });

  test('says nothing of moves where it could not be', () => {
    expect(whatIfWords(day, { ...answer, isRecorded: false })).toBe('could not be recorded');
  });
});
