import { describe, expect, test } from 'vitest';
import { openDayStore } from '../../src/app/day-store.ts';
import { callSlate, cutTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { openTakes, takesInOrder } from '../../src/day/takes.ts';
import { readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { factId, HIGHEST_COUNTER } from '../../src/shared/ids.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { sentenceFor } from '../../src/ui/words/problems.ts';
import { MORNING, speaker, take } from '../day/say.ts';

/** A day on the disk with these facts of another phone, however they came there, and a clock that stands where it is told. */
async function dayWith(foreign: readonly Envelope[], atMs = MORNING) {
  const journal = memoryJournal('phonea');
  const clock = { atMs };
  const open = () =>
    openDayStore('day-1', {
      journal,
      clock: { now: () => ({ atMs: clock.atMs, zone: 120 }) },
      window: 'win01',
      neighbours: { tell: () => {}, listen: () => () => {} },
    });
  const first = await open();
  first.addForeign(foreign as never, foreign);
  await first.flushed();
  const unreadable = async (): Promise<unknown[]> =>
    (await journal.read('day-1')).filter((fact) => !readFact(fact).ok);
  return { store: await open(), clock, journal, unreadable };
}

const foreign = (draft: Parameters<ReturnType<typeof speaker>['say']>[0], more: object = {}): Envelope =>
  ({ ...speaker('phoneb').say(draft)[0]!, ...more }) as Envelope;

describe('nothing is called saved that a reload refuses', () => {
  test('a day whose counter was run up to its end takes no action, and says so', async () => {
    const id = factId(HIGHEST_COUNTER, 'phoneb00000');
    const { store, unreadable } = await dayWith([foreign(take('24', 1, 1), { id })]);
    const result = store.run(rollTake);
    expect(result).toMatchObject({ ok: false, problem: { code: 'day-full' } });
    if (!result.ok) expect(sentenceFor(result.problem)).toContain('next day');
    expect(openTakes(store.day.value)).toEqual([]);
    await store.flushed();
    expect(await unreadable()).toEqual([]);
  });

  test('an action that says more than its entry may hold is refused with what and where', async () => {
    const { store, unreadable } = await dayWith([]);
    const slate = { style: 'numbered', number: 1_000_000, scene: '' } as const;
    const result = store.run((day) => callSlate(day, slate));
    expect(result).toMatchObject({ ok: false, problem: { code: 'entry-unfit', kind: 'slate-called' } });
    if (!result.ok) expect(sentenceFor(result.problem)).toContain('Nothing was changed');
    await store.flushed();
    expect(await unreadable()).toEqual([]);
    // And the next action is none the worse.
    expect(store.run(rollTake).ok).toBe(true);
  });

  test('a phone whose date stands before 1970 does not write what it cannot read', async () => {
    const { store, unreadable } = await dayWith([], -1);
    expect(store.run(rollTake)).toMatchObject({ ok: false, problem: { code: 'entry-unfit', where: 'at' } });
    expect(await unreadable()).toEqual([]);
  });
});

describe('what a stranger has run up to its ceiling', () => {
  test('a take number does not keep Roll from rolling: the first free number is taken', async () => {
    const { store, unreadable } = await dayWith(
      [foreign(take('24', 1, 1)), foreign(take('24', 1, 9999))].map((fact, at) => ({
        ...fact,
        id: factId(at + 1, 'phoneb00000'),
      })),
    );
    expect(store.run(rollTake).ok).toBe(true);
    expect(takesInOrder(store.day.value).at(-1)).toMatchObject({
      number: 2,
      slate: { scene: '24', setup: 1 },
    });
    await store.flushed();
    expect(await unreadable()).toEqual([]);
  });

  test('a take that has been open since 1970 can be cut; its length is not known', async () => {
    const open = foreign(take('24', 1, 1, { length: undefined, rolledAt: 0 }));
    const { store, unreadable } = await dayWith([JSON.parse(JSON.stringify(open))]);
    expect(store.run((day, now) => cutTake(day, now, open.id)).ok).toBe(true);
    expect(openTakes(store.day.value)).toEqual([]);
    expect(takesInOrder(store.day.value)[0]).toMatchObject({ cutAt: MORNING, length: null });
    await store.flushed();
    expect(await unreadable()).toEqual([]);
  });

  test('an action of more entries than one undo may name is undone and brought back whole', async () => {
    const { store, unreadable } = await dayWith([]);
    const takes = Array.from({ length: 2500 }, (_, at) => take('24', 1, at + 1));
    store.run(() => ({ ok: true, value: takes }));
    expect(store.undo().ok).toBe(true);
    expect(takesInOrder(store.day.value)).toHaveLength(0);
    expect(store.redo().ok).toBe(true);
    expect(takesInOrder(store.day.value)).toHaveLength(2500);
    expect(store.undo().ok).toBe(true);
    expect(takesInOrder(store.day.value)).toHaveLength(0);
    await store.flushed();
    expect(await unreadable()).toEqual([]);
  });
});
