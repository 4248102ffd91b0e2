import { describe, expect, test } from 'vitest';
import type { Take } from '../../../src/day/model.ts';
import type { Logged } from '../../../src/reconcile/log-and-card/logged.ts';
import type { Recorded } from '../../../src/reconcile/log-and-card/recorded.ts';
import { MARGIN_POINTS } from '../../../src/reconcile/pairing/match-recordings.ts';
import {
  CLOSE_START_MS,
  LEAST_POINTS,
  POINTS,
  scorePair,
} from '../../../src/reconcile/pairing/score-pair.ts';
import { loggedWith, recordedWith } from '../plain-pair.ts';

const DAY_MS = 86_400_000;
const score = (logged: Logged, recorded: Recorded) => scorePair(logged, recorded, (ms) => ms, DAY_MS);
const set = (...words: string[]): ReadonlySet<string> => new Set(words);

interface Case {
  readonly logged?: Partial<Logged>;
  readonly take?: Partial<Take>;
  readonly recorded: Partial<Recorded>;
}

const CASES: readonly (readonly [what: string, points: number, one: Case])[] = [
  ['the name', 60, { logged: { stem: 'A' }, recorded: { stems: set('A') } }],
  ['a name typed by hand', 120, { logged: { stem: 'A', nameTyped: true }, recorded: { stems: set('A') } }],
  ['the name but for a mark', 50, { logged: { stem: 'A' }, recorded: { shortStems: set('A') } }],
  [
    'a name typed by hand but for a mark',
    120,
    { logged: { stem: 'A', nameTyped: true }, recorded: { shortStems: set('A') } },
  ],
  ['another name', 0, { logged: { stem: 'A' }, recorded: { stems: set('B'), shortStems: set('B') } }],
  ['no name', 0, { recorded: { stems: set(''), shortStems: set('') } }],
  ['slate and take', 50, { logged: { scenes: ['24'] }, recorded: { scene: '24', number: 1 } }],
  ['the slate without a take', 15, { logged: { scenes: ['24'] }, recorded: { scene: '24' } }],
  ['the slate and another take', 5, { logged: { scenes: ['24'] }, recorded: { scene: '24', number: 2 } }],
  ['the scene and take', 15, { logged: { looseScenes: ['24'] }, recorded: { scene: '24', number: 1 } }],
  [
    'the scene and another take',
    0,
    { logged: { looseScenes: ['24'] }, recorded: { scene: '24', number: 2 } },
  ],
  ['the scene without a take', 0, { logged: { looseScenes: ['24'] }, recorded: { scene: '24' } }],
  ['the take alone', 5, { recorded: { number: 1 } }],
  ['another take alone', 0, { recorded: { number: 2 } }],
  ['another slate, the same take', -15, { logged: { scenes: ['24'] }, recorded: { scene: '25', number: 1 } }],
  ['another slate and take', -20, { logged: { scenes: ['24'] }, recorded: { scene: '25', number: 2 } }],
  ['another slate without a take', -20, { logged: { scenes: ['24'] }, recorded: { scene: '25' } }],
  ['a false start', 6, { take: { falseStart: true }, recorded: { types: set('FALSE_START') } }],
  ['not a false start', -6, { recorded: { types: set('FALSE_START') } }],
  ['a false start the file does not know of', 0, { take: { falseStart: true }, recorded: {} }],
  ['a wild track', 6, { take: { kind: 'wild' }, recorded: { types: set('WILD_TRACK') } }],
  [
    'room tone, which is wild to a file',
    6,
    { take: { kind: 'tone' }, recorded: { types: set('WILD_TRACK') } },
  ],
  ['no wild track', -6, { take: { kind: 'pickup' }, recorded: { types: set('WILD_TRACK') } }],
  ['a pickup', 6, { take: { kind: 'pickup' }, recorded: { types: set('PICKUP') } }],
  ['no pickup', -6, { recorded: { types: set('PICKUP') } }],
  [
    'a false start of a pickup',
    6,
    { take: { kind: 'pickup', falseStart: true }, recorded: { types: set('PICKUP', 'FALSE_START') } },
  ],
  [
    'a false start of no pickup',
    -6,
    { take: { falseStart: true }, recorded: { types: set('PICKUP', 'FALSE_START') } },
  ],
  ['a word that says nothing of it', 0, { recorded: { types: set('REHEARSAL') } }],
  ['the roll', 8, { logged: { roll: 'R1' }, recorded: { roll: 'R1' } }],
  ['another roll', -12, { logged: { roll: 'R1' }, recorded: { roll: 'R2' } }],
  ['a roll of one of them', 0, { logged: { roll: 'R1' }, recorded: {} }],
];

describe('what evidence is worth', () => {
  test.each(CASES)('%s: %i', (_, points, { logged, take, recorded }) => {
    const { points: all, reasons } = score(loggedWith(logged, take), recordedWith(recorded));
    expect(all).toBe(points);
    expect(reasons.map((reason) => reason.points)).toEqual(points === 0 ? [] : [points]);
  });

  test.each([
    [0, 40],
    [1, 30],
    [3, 20],
    [7, 10],
    [15, 0],
    [31, -10],
    [127, -30],
    [255, -30],
    [-3, 20],
  ])('a start %i s apart: %i, ten less with every doubling of a second more', (seconds, points) => {
    const logged = loggedWith({ startMs: 1000 });
    expect(score(logged, recordedWith({ startMs: (DAY_MS + 1000 + seconds * 1000) % DAY_MS })).points).toBe(
      points,
    );
  });

  test.each([
    [0, 15],
    [1, 10],
    [7, 0],
    [63, -15],
    [127, -15],
    [-1, 10],
  ])('a length %i s apart: %i, five less with every doubling', (seconds, points) => {
    const recorded = recordedWith({ lengthMs: 200_000 + seconds * 1000 });
    expect(score(loggedWith({ lengthMs: 200_000 }), recorded).points).toBe(points);
  });

  test('a start counts from the first sample or from the press of the button, whichever is nearer', () => {
    const recorded = { startMs: 100_000, pressMs: 106_000 };
    expect(score(loggedWith({ startMs: 106_000 }), recordedWith(recorded)).points).toBe(40);
    expect(score(loggedWith({ startMs: 100_000 }), recordedWith(recorded)).points).toBe(40);
  });

  test('a start counts by the clock that is known of', () => {
    const [logged, recorded] = [loggedWith({ startMs: 5000 }), recordedWith({ startMs: 65_000 })];
    expect(scorePair(logged, recorded, (ms) => ms + 60_000, DAY_MS).reasons).toEqual([
      { kind: 'start', points: 40 },
    ]);
  });

  test('a start or length of one of them says nothing', () => {
    expect(score(loggedWith({ startMs: 0, lengthMs: 0 }), recordedWith()).reasons).toEqual([]);
    expect(score(loggedWith(), recordedWith({ startMs: 0, lengthMs: 0 })).reasons).toEqual([]);
  });
});

describe('the relations that matter', () => {
  test('a name or a slate alone outweighs a wrong start', () => {
    for (const points of [POINTS.name, POINTS.shortName, POINTS.slateAndTake])
      expect(points + POINTS.startFarOff).toBeGreaterThan(0);
  });

  test('a fitting start with a fitting length outweighs a wrong slate and take', () => {
    expect(POINTS.start + POINTS.length + POINTS.otherSlateAndTake).toBeGreaterThanOrEqual(LEAST_POINTS - 1);
  });

  test('without name, slate or a close start no pair comes to the least', () => {
    const most = score(
      loggedWith({ looseScenes: ['1'], roll: 'R', startMs: 0, lengthMs: 5000 }, { falseStart: true }),
      recordedWith({
        number: 1,
        roll: 'R',
        startMs: CLOSE_START_MS,
        lengthMs: 5000,
        types: set('FALSE_START'),
      }),
    );
    expect(most.points).toBe(34);
    expect(LEAST_POINTS).toBe(36);
  });

  test('a choice is as good as the best when it costs less than a roll, or seven seconds of start', () => {
    expect(MARGIN_POINTS).toBe(POINTS.sameRoll);
    expect(CLOSE_START_MS).toBe(15_000);
  });
});
