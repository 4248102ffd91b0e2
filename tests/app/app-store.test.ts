import { describe, expect, test } from 'vitest';
import { takesInOrder } from '../../src/day/takes.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { phone } from './one-phone.ts';

const say = (number: number) => () => ({ ok: true as const, value: [take('24', 1, number)] });

async function dayWithHeldTake() {
  const { app, journal, state } = phone();
  const started = await app.start(() => ({ ok: true, value: [take('24', 1, 1)] }));
  if (!started.ok) throw new Error('not started');
  const day = started.value;
  const store = await app.open(day);
  state.full = true;
  store.run(say(2));
  await expect.poll(() => store.saving.value.state).toBe('not-saved');
  return { app, journal, state, day };
}

describe('a day left while the phone has no room', () => {
  test('still has what is held when it is opened again, and says no id twice', async () => {
    const { app, journal, state, day } = await dayWithHeldTake();
    await app.open('another');
    expect(app.isHolding()).toBe(true);
    const again = await app.open(day);
    expect(takesInOrder(again.day.value).map(({ number }) => number)).toEqual([1, 2]);
    again.run(say(3));
    state.full = false;
    again.retry();
    await again.flushed();
    expect(again.saving.value.state).toBe('saved');
    const ids = (await journal.read(day)).map((fact) => (fact as { id: string }).id);
    expect(ids).toHaveLength(3);
    expect(new Set(ids).size).toBe(3);
  });

  test('is saved when there is room, though another day is open, and forbids a restart until then', async () => {
    const { app, journal, state, day } = await dayWithHeldTake();
    const other = await app.open('another');
    other.run(say(1));
    await expect.poll(() => other.saving.value.state).toBe('not-saved');
    state.full = false;
    await expect.poll(async () => (await journal.read(day)).length, { timeout: 5000 }).toBe(2);
    other.retry();
    await expect.poll(() => app.isHolding()).toBe(false);
  });

  test('does not come back in part after it was erased', async () => {
    const { app, journal, state, day } = await dayWithHeldTake();
    const store = await app.open(day);
    await app.open('another');
    await app.erase(day);
    state.full = false;
    store.retry();
    await store.flushed();
    await store.copied();
    expect(await journal.read(day)).toEqual([]);
    expect(await journal.days()).toEqual([]);
    expect(store.run(say(4))).toMatchObject({ problem: { code: 'day-erased' } });
    expect(store.day.value.facts).toEqual([]);
    expect(app.isHolding()).toBe(false);
  });
});

test('the list of days counts what an open day has said, whether it is on the disk yet or not', async () => {
  const { app, state } = phone();
  const started = await app.start(() => ({ ok: true, value: [take('24', 1, 1)] }));
  if (!started.ok) throw new Error('not started');
  const store = await app.open(started.value);
  store.run(say(2));
  await store.flushed();
  await app.refreshDays();
  expect(app.days.value.map(({ takes }) => takes)).toEqual([2]);
  state.full = true;
  store.run(say(3));
  await app.refreshDays();
  expect(app.days.value.map(({ takes }) => takes)).toEqual([3]);
});

describe('the list of days is right at once, without asking the disk', () => {
  const startedDay = async () => {
    const { app, state } = phone();
    const started = await app.start(() => ({ ok: true, value: [take('24', 1, 1)] }));
    if (!started.ok) throw new Error('not started');
    return { app, state, day: started.value, store: await app.open(started.value) };
  };
  const takes = (days: readonly { readonly takes: number }[]) => days.map((day) => day.takes);

  test('after a take', async () => {
    const { app, store } = await startedDay();
    store.run(say(2));
    expect(takes(app.days.value)).toEqual([2]);
  });

  test('after another day was opened, which nobody has said anything of', async () => {
    const { app, store } = await startedDay();
    store.run(say(2));
    await app.open('looked-for');
    expect(takes(app.days.value)).toEqual([2]);
    await store.flushed();
    await expect.poll(() => app.isHolding()).toBe(false);
    expect(takes(app.days.value)).toEqual([2]);
  });

  test('after a day was left while the phone had no room', async () => {
    const { app, state, store } = await startedDay();
    state.full = true;
    store.run(say(2));
    await app.open('another');
    expect(takes(app.days.value)).toEqual([2]);
  });

  test('after a copy of the day has left the phone', async () => {
    const { app, store } = await startedDay();
    await store.copied();
    expect(app.days.value).toMatchObject([{ copiedAt: MORNING, copiedFacts: 1 }]);
  });

  test('after a day file was imported, and after a day was erased', async () => {
    const { app, day } = await startedDay();
    const other = speaker('other1', MORNING);
    other.say(take('25', 0, 1));
    const facts = other.facts.map((fact) => ({ ...fact, day: 'day-2' }));
    expect(await app.importText(writeDayFile('day-2', '', facts))).toMatchObject({ ok: true });
    expect(takes(app.days.value)).toEqual([1, 1]);
    await app.erase(day);
    expect(app.days.value.map(({ id }) => id)).toEqual(['day-2']);
    await app.erase('day-2');
    expect(app.days.value).toEqual([]);
  });
});

test('what a window held of a day that another one erased does not come back', async () => {
  const { app, journal, state, day } = await dayWithHeldTake();
  const store = await app.open(day);
  // The other window's erasing, and its word of it.
  await journal.erase(day);
  await store.refresh();
  expect(store.erased.value).toBe(true);
  state.full = false;
  store.retry();
  await store.flushed();
  expect(await journal.read(day)).toEqual([]);
});

test('a day without a date stands in the list where it was spoken of last', async () => {
  const { app, journal } = phone();
  const outline = (id: string, date: string, lastAt: number) => ({
    id,
    production: '',
    label: id,
    date,
    sample: false,
    takes: 0,
    facts: 1,
    lastAt,
  });
  await journal.describe(outline('older', '2026-10-05', MORNING + 1));
  await journal.describe(outline('undated', '', MORNING));
  await journal.describe(outline('next', '2026-10-08', MORNING));
  await app.refreshDays();
  expect(app.days.value.map(({ id }) => id)).toEqual(['next', 'undated', 'older']);
});
