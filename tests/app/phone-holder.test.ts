import { describe, expect, test } from 'vitest';
import { openDayStore } from '../../src/app/day-store.ts';
import { holderPlace, type PhoneHolder } from '../../src/app/phone-holder.ts';
import { batchOf } from '../../src/facts/kinds/envelope.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { whose } from '../../src/ui/words/phones.ts';
import { MORNING, speaker, take } from '../day/say.ts';

/** A store of text, as a browser has it, that may have no room. */
function storage(isFull = false) {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem(key: string, value: string) {
      if (isFull) throw new Error('full');
      kept.set(key, value);
    },
  } as unknown as Storage;
}

const JON: PhoneHolder = { name: 'Jon Berg', job: 'Boom operator' };

const opened = (holder?: PhoneHolder) =>
  openDayStore('day-1', {
    journal: memoryJournal('phonea'),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    holder: { read: () => holder, keep: () => {} },
  });

const say = (number: number) => () => ({ ok: true as const, value: [take('24', 1, number)] });

describe('who holds this phone', () => {
  test('is remembered, trimmed, and unknown until it was said', () => {
    const kept = storage();
    expect(holderPlace(kept).read()).toBeUndefined();
    holderPlace(kept).keep({ name: ' Jon Berg ', job: 'Boom operator' });
    expect(holderPlace(kept).read()).toEqual(JON);
  });

  test('holds for this window where nothing can be stored', () => {
    const place = holderPlace(storage(true));
    place.keep(JON);
    expect(place.read()).toEqual(JON);
    expect(holderPlace(undefined).read()).toBeUndefined();
  });

  test('goes onto the day with its first entry, once, and as no part of that action', async () => {
    const store = await opened(JON);
    store.run(say(1));
    store.run(say(2));
    const { facts } = store.day.peek();
    expect(facts.map(({ kind }) => kind)).toEqual(['take-logged', 'phone-named', 'take-logged']);
    expect(batchOf(facts[1]!)).toBe(facts[1]!.id);
    store.undo();
    store.undo();
    expect(store.canUndo.peek()).toBe(false);
    expect(store.day.peek().takeOrder).toEqual([]);
  });

  test('an unnamed phone says nothing of itself', async () => {
    const store = await opened();
    store.run(say(1));
    expect(store.day.peek().facts.map(({ kind }) => kind)).toEqual(['take-logged']);
  });

  test('is told beside an entry only on a day of several phones', async () => {
    const store = await opened(JON);
    store.run(say(1));
    const own = store.day.peek().facts[0]!.id;
    expect(whose(store.day.peek(), own, 'phonea')).toBe('');
    const other = speaker('phoneb').say(take('24', 1, 9));
    store.addForeign(other, other);
    expect(whose(store.day.peek(), own, 'phonea')).toBe('this phone');
    expect(whose(store.day.peek(), own, 'phoneb')).toBe('Jon Berg');
    expect(whose(store.day.peek(), other[0]!.id, 'phonea')).toBe('another phone');
  });
});
