import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { CardsOfDay, cardsOf } from '../../../src/app/card/card-on-hand.ts';
import { readCard } from '../../../src/app/card/read-card.ts';
import type { CardStore } from '../../../src/app/ports.ts';
import { idbCards } from '../../../src/storage/idb-cards.ts';
import { writeWave } from '../../../src/wave/file/write-wave.ts';
import type { ByteSource } from '../../../src/wave/riff/header-reader.ts';
import { phone } from '../one-phone.ts';

const wave = (name: string, at: number): ByteSource =>
  writeWave({
    name,
    sampleRate: 48_000,
    bits: 24,
    start: 48_000 * (36_000 + at * 300),
    length: 48_000 * 20,
    date: '2026-10-07',
    said: [['TAKE', String(at)]],
    speed: [],
    tracks: [{ channel: 1, name: 'Mix', mix: true }],
  });

const names = (cards: CardsOfDay): string[] =>
  cards.card.value.recordings.map(({ files }) => files[0]!.name).sort();

describe('the cards of a day', () => {
  test('are one check: a second folder is added, and a file chosen again counts once', async () => {
    const cards = new CardsOfDay('day-1', undefined);
    await cards.add([wave('A1.wav', 1), wave('A2.wav', 2)]);
    await cards.add([wave('B1.wav', 3), wave('A2.wav', 2)]);
    expect(names(cards)).toEqual(['A1.wav', 'A2.wav', 'B1.wav']);
    expect(cards.card.value).toMatchObject({ files: 3, stopped: false, reading: null });
  });

  test('stay over a reload, each day by itself, until the check is started over', async () => {
    const store = idbCards();
    const first = new CardsOfDay('day-1', store);
    await first.add([wave('A1.wav', 1)]);
    const again = new CardsOfDay('day-1', store);
    await again.restore();
    expect(names(again)).toEqual(['A1.wav']);
    const other = new CardsOfDay('day-2', store);
    await other.restore();
    expect(names(other)).toEqual([]);
    await again.clear();
    expect(names(again)).toEqual([]);
    expect(await store.read('day-1')).toBeUndefined();
  });

  test('are whose the user said over a reload, until the check is started over', async () => {
    const store = idbCards();
    const first = new CardsOfDay('day-4', store);
    await first.add([wave('A1.wav', 1)]);
    await first.own('CART 32', 'recorder');
    await first.add([wave('A2.wav', 2)]);
    await first.own('FIELD 8', 'b');
    const again = new CardsOfDay('day-4', store);
    await again.restore();
    expect(again.card.value.owners).toEqual({ 'CART 32': 'recorder', 'FIELD 8': 'b' });
    expect(names(again)).toEqual(['A1.wav', 'A2.wav']);
    await again.clear();
    expect(again.card.value.owners).toEqual({});
  });

  test('that are being read are not overwritten by what an earlier window left', async () => {
    const store = idbCards();
    await new CardsOfDay('day-3', store).add([wave('OLD.wav', 1)]);
    const now = new CardsOfDay('day-3', store);
    const restoring = now.restore();
    await now.add([wave('NEW.wav', 2)]);
    await restoring;
    expect(names(now)).toContain('NEW.wav');
  });

  test('are checked all the same where the phone keeps nothing', async () => {
    const refusing: CardStore = {
      read: () => Promise.reject(new Error('no')),
      keep: () => Promise.reject(new Error('no')),
      forget: () => Promise.reject(new Error('no')),
    };
    const cards = cardsOf('day-4', refusing);
    await cards.add([wave('A1.wav', 1)]);
    expect(names(cards)).toEqual(['A1.wav']);
    expect(cardsOf('day-4', refusing)).toBe(cards);
  });

  test('that were not read to the end say so', async () => {
    const cards = new CardsOfDay('day-5', undefined);
    const stopping: ByteSource = {
      ...wave('A2.wav', 2),
      read: async (from, to) => {
        cards.stop();
        return wave('A2.wav', 2).read(from, to);
      },
    };
    await cards.add([stopping, ...Array.from({ length: 20 }, (_, at) => wave(`Z${at}.wav`, at + 3))]);
    expect(cards.card.value.stopped).toBe(true);
    expect(cards.card.value.files).toBeLessThan(21);
  });
});

test('erasing a day forgets its cards', async () => {
  const store = idbCards();
  const { app } = phone(store);
  const started = await app.start(() => ({ ok: true, value: [{ kind: 'roll-changed', roll: 'A1' }] }));
  if (!started.ok) throw new Error('not started');
  await cardsOf(started.value, store).add([wave('A1.wav', 1)]);
  expect(await store.read(started.value)).toBeDefined();
  await app.erase(started.value);
  expect(await store.read(started.value)).toBeUndefined();
});

test('a day that was erased and imported again in the same window has no check yet', async () => {
  const { app } = phone();
  const started = await app.start(() => ({ ok: true, value: [{ kind: 'roll-changed', roll: 'A1' }] }));
  if (!started.ok) throw new Error('not started');
  const file = await app.dayFile(started.value);
  await cardsOf(started.value, undefined).add([wave('A1.wav', 1)]);
  await app.erase(started.value);
  expect(await app.importText(file)).toMatchObject({ ok: true });
  expect(cardsOf(started.value, undefined).card.value).toMatchObject({ recordings: [], files: 0 });
});

test('the files that a computer leaves beside others are no wave files', async () => {
  const files = [wave('A1.wav', 1), wave('._A1.wav', 1), wave('.DS_Store', 1)];
  const read = await readCard(files, new AbortController().signal, () => {});
  expect(read.descriptions.map(({ name }) => name)).toEqual(['A1.wav']);
  expect(read.refused).toEqual([]);
});
