import { expect, test } from 'vitest';
import { startLog } from '../../../src/app/commands/card.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { phone } from '../../app/one-phone.ts';
import { cardOf, recordCard } from '../../reconcile/build-card.ts';
import { filmDay } from '../../reconcile/film-day.ts';

test('a log started from a card, notes and all, is one step to undo and one to redo', async () => {
  const { app, journal } = phone();
  const started = await app.start(() => ({
    ok: true,
    value: [{ kind: 'day-described', fields: { label: 'Card' } }],
  }));
  if (!started.ok) throw new Error('not started');
  const store = await app.open(started.value);
  const [first, ...others] = cardOf(filmDay({ takes: 5, seed: 11 }).day());
  const recordings = await recordCard([{ ...first!, note: 'Plane at the end' }, ...others]);
  const notes = () => takesInOrder(store.day.value).flatMap((take) => take.notes.map(({ text }) => text));

  expect(store.runTogether(startLog(recordings)).ok).toBe(true);
  expect(takesInOrder(store.day.value)).toHaveLength(5);
  expect(notes()).toContain('Plane at the end');
  store.undo();
  expect(store.day.value.takeOrder).toEqual([]);
  expect(store.day.value.header.label).toBe('Card');
  expect(store.canUndo.value).toBe(false);
  store.redo();
  expect(notes()).toContain('Plane at the end');
  await store.flushed();
  expect(await journal.read(started.value)).toHaveLength(store.day.value.facts.length);
});

test('commands run together are all done or none', async () => {
  const { app } = phone();
  const store = await app.open('day-1');
  const said = store.runTogether([
    () => ({ ok: true, value: [{ kind: 'roll-changed', roll: 'A1' }] }),
    (day) => ({ ok: false, problem: { code: 'name-empty', rolls: day.rolls.join() } }),
  ]);
  expect(said).toEqual({ ok: false, problem: { code: 'name-empty', rolls: 'A1' } });
  expect(store.day.value.facts).toEqual([]);
  expect(store.saving.value.state).toBe('saved');
});
