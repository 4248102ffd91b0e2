import { describe, expect, test } from 'vitest';
import type { CommandResult, Moment } from '../../src/commands/command.ts';
import { bringBack, moveBefore, takeBack } from '../../src/commands/line/correct.ts';
import { callSlate, cutTake, describeTake, logTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, Fact, Slate } from '../../src/day/model.ts';
import { takeText } from '../../src/day/slate.ts';
import {
  currentSlate,
  nextTake,
  openTakes,
  ownOpenTake,
  slateAfter,
  takesInOrder,
} from '../../src/day/takes.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { counterOf, databaseOf, idSource } from '../../src/shared/ids.ts';
import { MORNING } from '../day/say.ts';

const MINE = 'phonea';
const THEIRS = 'phoneb';
const SECOND = 1000;

const lettered = (scene: string, setup: number): Slate => ({ style: 'lettered', scene, setup });

/** One day on two phones that know all of each other, at a time of day that is set. */
function set() {
  const facts: Fact[] = [];
  let atMs = MORNING;
  const day = (): Day => foldDay('day-1', facts);
  const on = (database: string) => {
    const does = (command: (day: Day, now: Moment) => CommandResult): Fact[] => {
      const said = command(day(), { atMs, zone: 120, database });
      if (!said.ok) throw new Error(said.problem.code);
      const ids = idSource(`${database}00000`);
      const seen: Record<string, number> = {};
      for (const { id } of facts) {
        ids.see(id);
        if (databaseOf(id) !== database) seen[databaseOf(id)] = counterOf(id);
      }
      const made = stampFacts(said.value, { day: 'day-1', at: atMs, zone: 120, seen, nextId: ids.next });
      facts.push(...made);
      return made;
    };
    return {
      does,
      roll: () => does(rollTake)[0]!.id,
      cut: (take?: string) => does((now, moment) => cutTake(now, moment, take)),
      log: (slate: Slate, before?: string) => does((now) => logTake(now, { slate }, { before }))[0]!.id,
    };
  };
  return {
    day,
    mine: on(MINE),
    theirs: on(THEIRS),
    wait: (ms: number): void => {
      atMs += ms;
    },
    /** The moment at which this phone does something. */
    now: (): Moment => ({ atMs, zone: 120, database: MINE }),
  };
}

const called = (day: Day): string[] => takesInOrder(day).map(takeText);
const openOn = (day: Day): string[] => openTakes(day).map(takeText);
const secondsOf = (day: Day, take: string): number | undefined => {
  const { length } = day.takes.get(take)!;
  return length ? length.frames / Number(length.rate) : undefined;
};

describe('an open take keeps its Cut', () => {
  test('when another take is logged by hand while it rolls', () => {
    const { day, mine, wait, now } = set();
    const rolling = mine.roll();
    wait(20 * SECOND);
    mine.log(lettered('23', 3));
    expect(called(day())).toEqual(['1/1', '23C/1']);
    expect(rollTake(day(), now())).toMatchObject({ problem: { code: 'take-open', take: '1/1' } });
    wait(10 * SECOND);
    mine.cut();
    expect(secondsOf(day(), rolling)).toBe(30);
    expect(openOn(day())).toEqual([]);
  });

  test('when it is moved on the line', () => {
    const { day, mine, wait, now } = set();
    const first = mine.roll();
    mine.cut();
    const rolling = mine.roll();
    mine.does((today) => moveBefore(today, rolling, first));
    expect(called(day())).toEqual(['1/2', '1/1']);
    expect(rollTake(day(), now())).toMatchObject({ problem: { code: 'take-open', take: '1/2' } });
    wait(30 * SECOND);
    mine.cut();
    expect(secondsOf(day(), rolling)).toBe(30);
  });

  test('when it is taken back, another rolls meanwhile, and it is brought back', () => {
    const { day, mine, wait } = set();
    const first = mine.roll();
    mine.does((today) => takeBack(today, [first]));
    expect(openOn(day())).toEqual([]);
    const second = mine.roll();
    mine.does((today) => bringBack(today, [first]));
    expect(openTakes(day()).map(({ id }) => id)).toEqual([first, second]);
    expect(ownOpenTake(day(), MINE)?.id).toBe(second);
    wait(30 * SECOND);
    mine.cut();
    expect(ownOpenTake(day(), MINE)?.id).toBe(first);
    wait(30 * SECOND);
    mine.cut();
    expect([first, second].map((take) => secondsOf(day(), take))).toEqual([60, 30]);
  });

  test("when a colleague's takes come in behind it", () => {
    const { day, mine, theirs, wait, now } = set();
    const rolling = mine.roll();
    wait(10 * SECOND);
    theirs.log(lettered('30', 2));
    expect(rollTake(day(), now())).toMatchObject({ problem: { code: 'take-open', take: '1/1' } });
    wait(20 * SECOND);
    mine.cut();
    expect(secondsOf(day(), rolling)).toBe(30);
  });

  test('until a length is typed for it, which closes it', () => {
    const { day, mine, now } = set();
    const rolling = mine.roll();
    mine.does((today) => describeTake(today, rolling, { length: { frames: 250, rate: '25' } }));
    expect(openOn(day())).toEqual([]);
    expect(cutTake(day(), now())).toMatchObject({ problem: { code: 'no-take-open' } });
    expect(rollTake(day(), now()).ok).toBe(true);
  });
});

describe("a colleague's open take", () => {
  test('leaves Roll to this phone, and Cut is for its own take', () => {
    const { day, mine, theirs, wait } = set();
    theirs.roll();
    wait(SECOND);
    const own = mine.roll();
    expect(openOn(day())).toEqual(['1/1', '1/2']);
    mine.cut();
    expect(secondsOf(day(), own)).toBe(0);
    expect(openOn(day())).toEqual(['1/1']);
    expect(cutTake(day(), { atMs: MORNING, zone: 120, database: MINE })).toMatchObject({
      problem: { code: 'no-take-open' },
    });
  });

  test('can be cut by name', () => {
    const { day, mine, theirs, wait } = set();
    const other = theirs.roll();
    wait(15 * SECOND);
    mine.cut(other);
    expect(secondsOf(day(), other)).toBe(15);
    expect(openOn(day())).toEqual([]);
    expect(cutTake(day(), { atMs: MORNING, zone: 120 }, other)).toMatchObject({
      problem: { code: 'no-take-open' },
    });
  });

  test('found again after more than a day is cut without a length: nobody knows when it ended', () => {
    const { day, mine, theirs, wait } = set();
    const [longest, longer] = [
      theirs.roll(),
      theirs.does((today) => logTake(today, { rolledAt: MORNING - 1 }))[0]!.id,
    ];
    wait(24 * 3600 * SECOND);
    mine.cut(longest);
    mine.cut(longer);
    expect(secondsOf(day(), longest)).toBe(86_400);
    expect(secondsOf(day(), longer)).toBeUndefined();
    expect(openOn(day())).toEqual([]);
  });
});

describe('the slate at hand while a take of this phone is open', () => {
  test("is that take's, whatever a colleague logs or calls behind it", () => {
    const { day, mine, theirs, wait } = set();
    mine.does((today) => callSlate(today, lettered('24', 1)));
    mine.roll();
    wait(SECOND);
    theirs.does((today) => callSlate(today, lettered('30', 0)));
    theirs.log(lettered('30', 0));
    const slate = currentSlate(day(), MINE);
    expect(slate).toEqual(lettered('24', 1));
    expect(takeText(nextTake(day(), 'take', slate))).toBe('24A/2');
    expect(slateAfter(day(), slate)).toEqual(lettered('24', 2));
    expect(currentSlate(day(), THEIRS)).toEqual(lettered('30', 0));
    mine.cut();
    expect(currentSlate(day(), MINE)).toEqual(lettered('30', 0));
  });

  test('is the one called since, and not that of a take logged by hand', () => {
    const { day, mine } = set();
    mine.does((today) => callSlate(today, lettered('24', 1)));
    mine.roll();
    mine.log(lettered('23', 3));
    expect(currentSlate(day(), MINE)).toEqual(lettered('24', 1));
    mine.does((today) => callSlate(today, lettered('25', 0)));
    mine.log(lettered('23', 3));
    expect(currentSlate(day(), MINE)).toEqual(lettered('25', 0));
  });

  test('is the one called before it where it is a wild track, whoever called it', () => {
    const { day, mine, theirs } = set();
    theirs.does((today) => callSlate(today, lettered('24', 1)));
    mine.does((today, moment) => rollTake(today, moment, 'wild'));
    theirs.does((today) => callSlate(today, lettered('30', 0)));
    expect(currentSlate(day(), MINE)).toEqual(lettered('24', 1));
  });

  test('follows the line again once none is open', () => {
    const { day, mine, theirs } = set();
    mine.does((today) => callSlate(today, lettered('24', 1)));
    mine.roll();
    mine.cut();
    theirs.log(lettered('30', 0));
    expect(currentSlate(day(), MINE)).toEqual(lettered('30', 0));
    expect(currentSlate(day())).toEqual(lettered('30', 0));
  });

  test('stays one’s own when a colleague who knew nothing of it logged under another', () => {
    const { day, mine, theirs, wait } = set();
    theirs.does((today) => callSlate(today, lettered('24', 0)));
    mine.does((today) => callSlate(today, lettered('24', 1)));
    mine.roll();
    wait(SECOND);
    const apart = day().facts;
    theirs.log(lettered('30', 0));
    const theirTake = day().facts.at(-1)!;
    const { seen: _, ...unaware } = theirTake;
    mine.cut();
    const merged = foldDay('day-1', [...apart, unaware as Fact, ...day().facts.slice(apart.length + 1)]);
    expect(currentSlate(merged, MINE)).toEqual(lettered('24', 1));
    expect(currentSlate(merged, THEIRS)).toEqual(lettered('30', 0));
  });
});
