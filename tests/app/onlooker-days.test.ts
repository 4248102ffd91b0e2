import { describe, expect, test } from 'vitest';
import { openDayStore } from '../../src/app/day-store.ts';
import { onlookerDays } from '../../src/app/onlooker-days.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING, take } from '../day/say.ts';

const opened = (looksOn: string[]) =>
  openDayStore('day-1', {
    journal: memoryJournal('phonea'),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    holder: { read: () => ({ name: 'Jon Berg', job: '' }), keep: () => {} },
    onlooking: { has: (day) => looksOn.includes(day), keep: () => {} },
  });

const say = () => ({ ok: true as const, value: [take('24', 1, 1)] });
const REFUSED = { ok: false, problem: { code: 'day-reads-only' } };

describe('a phone that looks on', () => {
  test('writes nothing of the day, not even who holds it, and undoes nothing', async () => {
    const store = await opened(['day-1']);
    expect(store.readsOnly.peek()).toBe('looks-on');
    expect(store.run(say)).toEqual(REFUSED);
    expect(store.runTogether([])).toEqual(REFUSED);
    expect(store.undo()).toEqual(REFUSED);
    expect(store.day.peek().facts).toEqual([]);
  });

  test('writes on its other days', async () => {
    const store = await opened(['day-2']);
    expect(store.readsOnly.peek()).toBeNull();
    expect(store.run(say)).toMatchObject({ ok: true });
  });

  test('is remembered by day, and forgotten', () => {
    const kept = new Map<string, string>();
    const storage = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    } as unknown as Storage;
    const days = onlookerDays(storage);
    days.keep('day-1', true);
    days.keep('day-2', true);
    days.keep('day-1', true);
    expect(onlookerDays(storage).has('day-1')).toBe(true);
    onlookerDays(storage).keep('day-1', false);
    expect([days.has('day-1'), days.has('day-2'), days.has('day-')]).toEqual([false, true, false]);
  });

  test('is known to this window where nothing can be stored', () => {
    const days = onlookerDays(undefined);
    days.keep('day-1', true);
    expect(days.has('day-1')).toBe(true);
  });
});
