import { describe, expect, test } from 'vitest';
import { openDayStore, type StoreParts } from '../../src/app/day-store.ts';
import type { Journal } from '../../src/app/ports.ts';
import { cutTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { openTakes, takesInOrder } from '../../src/day/takes.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING, speaker, take } from '../day/say.ts';

/** Windows of one phone: they hear each other and share a journal. */
function phone(journal: Journal = memoryJournal('phonea')) {
  const listeners = new Set<(day: string) => void>();
  let opened = 0;
  const parts = (): StoreParts => {
    opened += 1;
    const own: { hear?: (day: string) => void } = {};
    return {
      journal,
      clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
      window: `win0${opened}`,
      neighbours: {
        tell: (day) => {
          for (const listener of listeners) if (listener !== own.hear) listener(day);
        },
        listen(onNews) {
          own.hear = onNews;
          listeners.add(onNews);
          return () => listeners.delete(onNews);
        },
      },
    };
  };
  return {
    open: () => openDayStore('day-1', parts()),
    journal,
    erase: () => journal.erase('day-1'),
  };
}

/** A journal that says no as long as it is told to. */
function stubborn(): { journal: Journal; refuse: (error: Error | null) => void } {
  const inner = memoryJournal('phonea');
  let no: Error | null = null;
  return {
    refuse: (error) => {
      no = error;
    },
    journal: {
      ...inner,
      append: async (facts, outline) => {
        if (no) throw no;
        return inner.append(facts, outline);
      },
    },
  };
}

const say = (number: number) => () => ({ ok: true as const, value: [take('24', 1, number)] });

describe('the open day', () => {
  test('has an action at once and calls it saved only when the journal has it', async () => {
    const { open, journal } = phone();
    const store = await open();
    store.run(say(1));
    expect(takesInOrder(store.day.value)).toHaveLength(1);
    expect(store.saving.value.state).toBe('saving');
    await store.flushed();
    expect(store.saving.value).toEqual({ state: 'saved', waiting: 0, because: null, restored: 0 });
    expect(await journal.read('day-1')).toHaveLength(1);
  });

  test('gives two quick rolls two answers: the second sees the first before it is on the disk', async () => {
    const store = await phone().open();
    expect(store.run((day, now) => rollTake(day, now)).ok).toBe(true);
    expect(store.run((day, now) => rollTake(day, now))).toMatchObject({ problem: { code: 'take-open' } });
  });

  test("leaves Roll to this phone while a colleague's take is open, and Cut its own take", async () => {
    const store = await phone().open();
    const foreign = speaker('phoneb').say(take('24', 1, 1, { length: null, rolledAt: MORNING }));
    store.addForeign(foreign, foreign);
    expect(store.run((day, now) => rollTake(day, now)).ok).toBe(true);
    expect(store.run((day, now) => cutTake(day, now)).ok).toBe(true);
    expect(openTakes(store.day.value).map(({ id }) => id)).toEqual([foreign[0]!.id]);
  });

  test('is the same after it is opened again, with undo and redo across', async () => {
    const { open } = phone();
    const first = await open();
    first.run(say(1));
    first.run(say(2));
    await first.flushed();
    first.close();
    const second = await open();
    expect(takesInOrder(second.day.value)).toHaveLength(2);
    second.undo();
    await second.flushed();
    const third = await open();
    expect(takesInOrder(third.day.value)).toHaveLength(1);
    expect(third.canRedo.value).toBe(true);
    third.redo();
    expect(takesInOrder(third.day.value)).toHaveLength(2);
  });

  test('holds what the device refuses, says why, and keeps all of it in order when it may', async () => {
    const { journal, refuse } = stubborn();
    const store = await phone(journal).open();
    refuse(Object.assign(new Error('full'), { name: 'QuotaExceededError' }));
    store.run(say(1));
    store.run(say(2));
    await expect.poll(() => store.saving.value.state).toBe('not-saved');
    expect(store.saving.value).toMatchObject({ waiting: 2, because: 'QuotaExceededError' });
    expect(takesInOrder(store.day.value)).toHaveLength(2);
    refuse(null);
    store.retry();
    await store.flushed();
    expect(store.saving.value.state).toBe('saved');
    expect((await journal.read('day-1')).map((fact) => (fact as { id: string }).id)).toEqual(
      store.day.value.facts.map(({ id }) => id),
    );
  });

  test('follows what another window says, without a reload and without losing its own', async () => {
    const { open } = phone();
    const [a, b] = await Promise.all([open(), open()]);
    a.run(say(1));
    b.run(say(2));
    await Promise.all([a.flushed(), b.flushed()]);
    await expect.poll(() => takesInOrder(a.day.value).length).toBe(2);
    await expect.poll(() => takesInOrder(b.day.value).length).toBe(2);
    expect(a.day.value.facts.map(({ id }) => id)).toEqual(b.day.value.facts.map(({ id }) => id));
  });

  test('is caught up with what another window said while the day was being read', async () => {
    const inner = memoryJournal('phonea');
    let inBetween = async (): Promise<void> => {};
    const { open } = phone({
      ...inner,
      async read(day) {
        const read = await inner.read(day);
        await inBetween();
        return read;
      },
    });
    const other = await open();
    inBetween = async () => {
      inBetween = async () => {};
      other.run(say(1));
      await other.flushed();
    };
    const store = await open();
    await expect.poll(() => takesInOrder(store.day.value)).toHaveLength(1);
  });

  test('marks its facts with what it knew of other phones', async () => {
    const store = await phone().open();
    const foreign = speaker('phoneb').say(take('24', 1, 9));
    store.addForeign(foreign, foreign);
    const said = store.run(say(1));
    expect(said.ok && said.value[0]).toMatchObject({ seen: { phoneb: 1 } });
    expect(store.undo().ok).toBe(true);
    expect(takesInOrder(store.day.value).map(({ number }) => number)).toEqual([9]);
    expect(store.undo()).toMatchObject({ problem: { code: 'nothing-to-undo' } });
  });

  test('that another window erased says so, and takes no more actions', async () => {
    const { open, journal, erase } = phone();
    const [one, two] = [await open(), await open()];
    one.run(say(1));
    await one.flushed();
    await two.refresh();
    await erase();
    await two.refresh();
    expect(two.erased.value).toBe(true);
    expect(two.run(say(2))).toMatchObject({ ok: false, problem: { code: 'day-erased' } });
    expect(await journal.read('day-1')).toEqual([]);
  });

  test('says whether the copy that left the phone still is the day', async () => {
    const store = await phone().open();
    expect(store.copy.value).toBe('none');
    store.run(say(1));
    await store.copied();
    expect(store.copy.value).toBe('whole');
    store.run(say(2));
    expect(store.copy.value).toBe('older');
  });
});
