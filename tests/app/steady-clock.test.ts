import { describe, expect, test } from 'vitest';
import { type DayStore, openDayStore } from '../../src/app/day-store.ts';
import { steadyClock, steadyNext } from '../../src/app/steady-clock.ts';
import { cutTake, logTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { clockRemarks } from '../../src/day/phones/clock-remarks.ts';
import { openTakes, takesInOrder } from '../../src/day/takes.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING } from '../day/say.ts';

const HOUR = 3_600_000;

/** A phone whose date can be set and whose counter may stand still. */
function phone() {
  const shows = { dateMs: MORNING, zone: 120, elapsedMs: 1000.4, awake: true };
  return {
    shows,
    pass(ms: number) {
      shows.dateMs += ms;
      shows.elapsedMs += ms;
    },
  };
}

/** A take of a minute, with something happening to the clock in the middle of it. */
async function takeWhile(happens: (shows: ReturnType<typeof phone>['shows'], store: DayStore) => void) {
  const { shows, pass } = phone();
  const open: { take: () => boolean } = { take: () => false };
  const store = await openDayStore('day-1', {
    journal: memoryJournal('phonea'),
    clock: steadyClock(
      () => shows,
      () => open.take(),
    ),
    neighbours: { tell: () => {}, listen: () => () => {} },
    window: 'win01',
  });
  open.take = () => openTakes(store.day.peek()).length > 0;
  store.run((day, now) => rollTake(day, now));
  pass(30_000);
  happens(shows, store);
  pass(30_000);
  store.run(cutTake);
  return { take: takesInOrder(store.day.peek())[0]!, store, shows };
}

describe('the clock of a window', () => {
  test('a take keeps its length when the clock is set back an hour in the middle of it', async () => {
    const { take } = await takeWhile((shows) => {
      shows.dateMs -= HOUR;
    });
    // 60 s at 25 frames a second.
    expect(take.length).toEqual({ frames: 1500, rate: '25' });
  });

  test('a take keeps its length when another is logged by hand behind it and the clock is then set back', async () => {
    const { take } = await takeWhile((shows, store) => {
      store.run((day) => logTake(day, { number: 9 }));
      shows.dateMs -= HOUR;
    });
    expect(take.length).toEqual({ frames: 1500, rate: '25' });
  });

  test('a take keeps its length when the zone changes in the middle of it, as at the end of summer time', async () => {
    const { take } = await takeWhile((shows) => {
      shows.zone = 60;
    });
    expect(take.length).toEqual({ frames: 1500, rate: '25' });
  });

  test('a phone that slept through half a take counts the sleep', async () => {
    const { take } = await takeWhile((shows) => {
      shows.dateMs += 90_000;
      shows.awake = false;
    });
    expect(take.length).toEqual({ frames: 3750, rate: '25' });
  });

  test('a take keeps its length when the clock is set ahead an hour while the app is in view, and the day notes it', async () => {
    const { take, store } = await takeWhile((shows) => {
      shows.dateMs += HOUR;
    });
    expect(take.length).toEqual({ frames: 1500, rate: '25' });
    expect(store.day.peek().facts.map(({ ahead }) => ahead)).toEqual([undefined, HOUR]);
    expect(clockRemarks(store.day.peek())).toEqual([
      { kind: 'set-ahead', by: store.day.peek().facts[1]!.id, ms: HOUR },
    ]);
  });

  test('says once that it was set ahead, and not of a clock that the network put right by a moment', async () => {
    const { store, shows } = await takeWhile((phoneShows) => {
      phoneShows.dateMs += 900;
    });
    shows.dateMs += HOUR;
    store.run((day, now) => rollTake(day, now));
    store.run(cutTake);
    const aheads = store.day.peek().facts.map(({ ahead }) => ahead);
    expect(aheads).toEqual([undefined, undefined, HOUR, undefined]);
  });

  test('follows the new date as soon as no take is open', async () => {
    const { store, shows } = await takeWhile((phoneShows) => {
      phoneShows.dateMs -= HOUR;
    });
    store.run((day, now) => rollTake(day, now));
    expect(takesInOrder(store.day.peek())[1]).toMatchObject({ rolledAt: shows.dateMs });
  });

  test('takes a few milliseconds between date and counter for nothing', () => {
    const last = { atMs: 5000, dateMs: 5000, elapsedMs: 0, aheadMs: 0, offset: 0 };
    const shows = { zone: 0, awake: true };
    expect(steadyNext(last, { ...shows, dateMs: 5990, elapsedMs: 1000.6 }, true).atMs).toBe(5990);
    expect(steadyNext(last, { ...shows, dateMs: 1000, elapsedMs: 700 }, true).atMs).toBe(5700);
  });
});
