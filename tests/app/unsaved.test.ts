import { describe, expect, test } from 'vitest';
import { appStore } from '../../src/app/app-store.ts';
import type { InDoubt } from '../../src/app/in-doubt.ts';
import type { Journal } from '../../src/app/ports.ts';
import { safekeeping } from '../../src/app/safekeeping.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { holdingPlace } from '../../src/storage/holding-place.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { inDoubtWords } from '../../src/ui/words/in-doubt.ts';
import { MORNING, take } from '../day/say.ts';
import { memoryStorage } from '../storage/memory-storage.ts';

const say = (number: number) => () => ({ ok: true as const, value: [take('24', 1, number)] });

/** A phone whose windows come and go, which may have no room in its database. */
function phone() {
  const inner = memoryJournal('phonea');
  const state = { full: false };
  const storage = memoryStorage();
  const journal: Journal = {
    ...inner,
    state: { database: 'phonea', kept: true },
    async append(...what) {
      if (state.full) throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
      return inner.append(...what);
    },
  };
  let windows = 0;
  /** A window; the one before it is closed, and leaves only what it has put somewhere. */
  const openApp = () => {
    windows += 1;
    const window = `win0${windows}`;
    const app = appStore({
      journal,
      clock: { now: () => ({ atMs: MORNING + windows, zone: 120 }) },
      window,
      neighbours: { tell: () => {}, listen: () => () => {} },
      newDayId: () => `day-${windows}`,
      safekeeping: safekeeping(undefined),
      holding: holdingPlace({ window, storage: storage.area }),
    });
    return app;
  };
  return { openApp, journal, state, storage };
}

/** A day with one take on the disk and two that are held, after its window was closed. */
async function closedWithHeldTakes() {
  const rest = phone();
  const app = rest.openApp();
  const started = await app.start(() => ({ ok: true, value: [take('24', 1, 1)] }));
  if (!started.ok) throw new Error('not started');
  const day = started.value;
  const store = await app.open(day);
  rest.state.full = true;
  store.run(say(2));
  await expect.poll(() => store.saving.value.state).toBe('not-saved');
  store.run(say(3));
  const { openApp, journal, state, storage } = rest;
  return {
    openApp,
    journal,
    state,
    storage,
    day,
    closed: app,
    heldIds: store.day.value.facts.slice(1).map(({ id }) => id),
  };
}

const numbers = (days: ReturnType<ReturnType<typeof phone>['openApp']>['unsaved']['days']) =>
  days.value.map(({ day, actions }) => [day, actions.length]);

describe('actions that were held when the app was closed', () => {
  test('are offered by the next window, and restored they keep their ids and reach the disk', async () => {
    const { openApp, journal, state, storage, day, heldIds } = await closedWithHeldTakes();
    const app = openApp();
    await app.unsaved.refresh();
    expect(numbers(app.unsaved.days)).toEqual([[day, 2]]);
    const store = await app.open(day);
    expect(takesInOrder(store.day.value)).toHaveLength(1);
    state.full = false;
    expect(await app.unsaved.restore(day)).toMatchObject({ ok: true, value: 2 });
    await store.flushed();
    expect(takesInOrder(store.day.value).map(({ number }) => number)).toEqual([1, 2, 3]);
    const stored = (await journal.read(day)).map((fact) => (fact as Envelope).id);
    expect(stored.slice(1)).toEqual(heldIds);
    expect(app.unsaved.days.value).toEqual([]);
    expect(storage.keys()).toEqual([]);
    // Undo takes back the last of them, as if nothing had happened.
    store.undo();
    expect(takesInOrder(store.day.value).map(({ number }) => number)).toEqual([1, 2]);
  });

  test('are held again where there still is no room, once, and offered by the window after', async () => {
    const { openApp, storage, day } = await closedWithHeldTakes();
    const app = openApp();
    await app.unsaved.refresh();
    await app.unsaved.restore(day);
    const store = await app.open(day);
    await expect.poll(() => store.saving.value.waiting).toBe(2);
    expect(storage.keys()).toHaveLength(2);
    const third = openApp();
    await third.unsaved.refresh();
    expect(numbers(third.unsaved.days)).toEqual([[day, 2]]);
  });

  test('restored by two windows are there once', async () => {
    const { openApp, journal, state, day } = await closedWithHeldTakes();
    const [one, other] = [openApp(), openApp()];
    await Promise.all([one.unsaved.refresh(), other.unsaved.refresh()]);
    state.full = false;
    await Promise.all([one.unsaved.restore(day), other.unsaved.restore(day)]);
    await Promise.all([(await one.open(day)).flushed(), (await other.open(day)).flushed()]);
    expect(await journal.read(day)).toHaveLength(3);
  });

  test('that reached the disk after all are let go without a word', async () => {
    const { openApp, state, storage, closed, day } = await closedWithHeldTakes();
    state.full = false;
    const store = await closed.open(day);
    // Its window was put to sleep before it could take note.
    const before = storage.copy();
    store.retry();
    await store.flushed();
    expect(storage.keys()).toEqual([]);
    storage.restore(before);
    const app = openApp();
    await app.unsaved.refresh();
    expect(app.unsaved.days.value).toEqual([]);
    expect(storage.keys()).toEqual([]);
  });

  test('stand before what is said first and restored later', async () => {
    const { openApp, state, day } = await closedWithHeldTakes();
    state.full = false;
    const app = openApp();
    await app.unsaved.refresh();
    const store = await app.open(day);
    store.run(say(4));
    await app.unsaved.restore(day);
    await store.flushed();
    expect(takesInOrder(store.day.value).map(({ number }) => number)).toEqual([1, 2, 3, 4]);
  });

  test('put the next day in doubt until they are restored or discarded', async () => {
    const { openApp, state, day } = await closedWithHeldTakes();
    state.full = false;
    const app = openApp();
    await app.unsaved.refresh();
    const asked = await app.startFrom(day);
    expect(asked).toMatchObject({ problem: { code: 'next-day-in-doubt', unsaved: 2 } });
    expect(!asked.ok && inDoubtWords(asked.problem as InDoubt)).toEqual([
      '2 actions of this day were not saved when the app was closed, and are not restored. What it says is missing.',
    ]);
    await app.unsaved.discard(day);
    expect((await app.startFrom(day)).ok).toBe(true);
  });

  test('and discarded are offered no more', async () => {
    const { openApp, storage, day } = await closedWithHeldTakes();
    const app = openApp();
    await app.unsaved.refresh();
    await app.unsaved.discard(day);
    expect(app.unsaved.days.value).toEqual([]);
    expect(storage.keys()).toEqual([]);
  });

  test('of a day that is erased are gone with it, whichever window erases', async () => {
    const { openApp, storage, day } = await closedWithHeldTakes();
    const app = openApp();
    await app.unsaved.refresh();
    await app.erase(day);
    expect(app.unsaved.days.value).toEqual([]);
    expect(storage.keys()).toEqual([]);
  });

  test('of a day that never reached the disk are offered with its name', async () => {
    const { openApp, state } = phone();
    state.full = true;
    const head = { kind: 'day-described' as const, fields: { production: 'Harbour Lights' } };
    const started = await openApp().start(() => ({ ok: true, value: [head] }));
    if (!started.ok) throw new Error('not started');
    state.full = false;
    const app = openApp();
    await app.unsaved.refresh();
    const [left] = app.unsaved.days.value;
    expect(left).toMatchObject({ day: started.value, isNew: true });
    expect(left?.after.header.production).toBe('Harbour Lights');
    await app.unsaved.restore(started.value);
    await (await app.open(started.value)).flushed();
    await app.refreshDays();
    expect(app.days.value.map(({ production }) => production)).toEqual(['Harbour Lights']);
  });

  test('of a newer version are restored as they are, and those that cannot be read stay until discarded', async () => {
    const { openApp, journal, state, storage, day, heldIds } = await closedWithHeldTakes();
    const [first, second] = storage.keys();
    const newer = {
      ...JSON.parse(storage.area.getItem(first!)!)[0],
      kind: 'lens-changed',
      v: 2,
      glass: '50',
    };
    storage.area.setItem(first!, JSON.stringify([newer]));
    storage.area.setItem(second!, '[{"id":"torn');
    const app = openApp();
    await app.unsaved.refresh();
    expect(app.unsaved.days.value).toMatchObject([{ actions: [[{ unknown: true }]], unreadable: 1 }]);
    state.full = false;
    await app.unsaved.restore(day);
    await (await app.open(day)).flushed();
    expect((await journal.read(day)).filter((fact) => (fact as Envelope).id === heldIds[0])).toEqual([newer]);
    expect(app.unsaved.days.value).toMatchObject([{ actions: [], unreadable: 1 }]);
    await app.unsaved.discard(day);
    expect(storage.keys()).toEqual([]);
  });

  test('that contradict an entry of the day stay out, and stay', async () => {
    const { openApp, state, storage, day } = await closedWithHeldTakes();
    state.full = false;
    const app = openApp();
    await app.unsaved.refresh();
    const [first] = storage.keys();
    const [held] = JSON.parse(storage.area.getItem(first!)!);
    const store = await app.open(day);
    const other = { ...held, number: 9 };
    store.addForeign([other], [other]);
    expect(await app.unsaved.restore(day)).toMatchObject({ problem: { code: 'held-contradicts' } });
    expect(storage.keys()).toContain(first);
  });

  test('are not offered while their window is open', async () => {
    const locks = openLocks();
    const storage = memoryStorage();
    const parts = { storage: storage.area, locks: locks.manager };
    const one = holdingPlace({ window: 'win01', ...parts });
    one.keep('day-1', [{ id: '000001-phoneawin01', day: 'day-1' } as Envelope]);
    const two = holdingPlace({ window: 'win02', ...parts });
    expect(two.left()).toEqual([]);
    let heard = 0;
    two.listen(() => {
      heard += 1;
    });
    locks.close('win01');
    await expect.poll(() => two.left().length).toBe(1);
    expect(heard).toBe(1);
    expect(one.left()).toEqual([]);
  });

  test('are in this window only where no other place takes them, and that is known', async () => {
    const { openApp, state, storage } = phone();
    storage.refuse();
    const app = openApp();
    const store = await app.open('day-1');
    state.full = true;
    store.run(say(1));
    await expect.poll(() => store.saving.value.state).toBe('not-saved');
    expect(store.saving.value.inWindowOnly).toBe(true);
    storage.allow();
    store.retry();
    await expect.poll(() => store.saving.value.inWindowOnly).toBe(undefined);
  });

  test('and those a slow disk has not answered for are put aside when the window is left', async () => {
    const { openApp, storage, journal } = phone();
    const app = openApp();
    const store = await app.open('day-1');
    journal.append = () => new Promise(() => {});
    store.run(say(1));
    expect(storage.keys()).toEqual([]);
    app.putAside();
    await expect.poll(() => storage.keys().length).toBe(1);
  });
});

/** The browser's locks as two windows see them: each is granted when whoever has it is closed. */
function openLocks() {
  const waiting = new Map<string, (() => void)[]>();
  const held = new Set<string>();
  const manager = {
    async request(name: string, work: () => unknown) {
      if (held.has(name)) {
        await new Promise<void>((done) => waiting.set(name, [...(waiting.get(name) ?? []), done]));
      } else held.add(name);
      return work();
    },
  } as unknown as LockManager;
  const close = (window: string): void => {
    for (const [name, done] of waiting) if (name.endsWith(window)) for (const next of done) next();
  };
  return { manager, close };
}
