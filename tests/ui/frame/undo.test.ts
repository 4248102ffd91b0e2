import { beforeEach, expect, test, vi } from 'vitest';
import type { DayStore } from '../../../src/app/day-store.ts';
import { fail, ok } from '../../../src/shared/result.ts';
import { undoLast, undoOf } from '../../../src/ui/frame/undo.ts';
import { notice } from '../../../src/ui/kit/messages.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const BUILT_ON = fail({ code: 'undo-built-on', take: '24/1', count: 2 } as const);

/** As much of a store as undo asks for; it refuses once where another phone has built on the action. */
function storeThat(isBuiltOn: boolean) {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  const day = phone.day();
  const undo = vi.fn((how?: { evenIfBuiltOn: boolean }) =>
    isBuiltOn && !how?.evenIfBuiltOn ? BUILT_ON : ok([]),
  );
  const undoes = { value: day.facts.at(-1)!.id as string | undefined };
  const store = { day: { peek: () => day }, undo, undoes, canRedo: { value: true } } as unknown as DayStore;
  return { store, undo, undoes, last: day.facts.at(-1)! };
}

beforeEach(() => {
  notice.value = { text: '', at: 0 };
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => setTimeout(work));
});

const labels = () => notice.value.actions?.map(({ label }) => label);

test('undo of what another phone has built on is asked about first, and stays so until answered', async () => {
  const { store, undo } = storeThat(true);
  undoLast(store);
  await vi.waitFor(() => expect(notice.value.text).toContain('24/1'));
  expect(notice.value.isQuestion).toBe(true);
  expect(labels()).toEqual(['Undo it anyway', 'Keep it']);
  notice.value.actions![1]!.onTap();
  expect(notice.value.text).toBe('');
  expect(undo).toHaveBeenCalledTimes(1);
});

test('undo goes ahead where the answer is yes, and says so with a way back', async () => {
  const { store, undo } = storeThat(true);
  undoLast(store);
  await vi.waitFor(() => expect(notice.value.isQuestion).toBe(true));
  notice.value.actions![0]!.onTap();
  expect(undo).toHaveBeenLastCalledWith({ evenIfBuiltOn: true });
  await vi.waitFor(() => expect(notice.value.text).toMatch(/^Undone/));
  expect(labels()).toEqual(['Redo']);
});

test('a message offers undo of its own action only, and only while that is the last', () => {
  const { store, undoes, last } = storeThat(false);
  const [action] = undoOf(store, [last]);
  expect(action!.isOffered!()).toBe(true);
  undoes.value = 'another';
  expect(action!.isOffered!()).toBe(false);
  expect(undoOf(store, [])).toEqual([]);
});
