import type { DayStore } from '../../app/day-store.ts';
import type { Fact } from '../../day/model.ts';
import type { MessageAction } from '../kit/messages.ts';
import { ask, complain, tell } from './messages.ts';

/** Undoes this phone's last action and says what it was. Asks first if another phone has built on it. */
export function undoLast(store: DayStore, how?: { readonly evenIfBuiltOn: boolean }): void {
  const result = store.undo(how);
  if (result.ok) void sayUndone(store, 'Undone', result.value, redoOf(store));
  else if (result.problem.code !== 'undo-built-on') complain(result.problem);
  else {
    ask(result.problem, [
      { label: 'Undo it anyway', onTap: () => undoLast(store, { evenIfBuiltOn: true }) },
      { label: 'Keep it', onTap: () => {} },
    ]);
  }
}

export function redoLast(store: DayStore): void {
  const result = store.redo();
  if (result.ok) void sayUndone(store, 'Redone', result.value, []);
  else complain(result.problem);
}

/** Offers to undo an action in the message about it, as long as it is the last one. */
export function undoOf(store: DayStore, said: readonly Fact[]): MessageAction[] {
  const action = said[0]?.id;
  if (action === undefined) return [];
  return [{ label: 'Undo', onTap: () => undoLast(store), isOffered: () => store.undoes.value === action }];
}

const redoOf = (store: DayStore): MessageAction[] => [
  { label: 'Redo', onTap: () => redoLast(store), isOffered: () => store.canRedo.value },
];

async function sayUndone(
  store: DayStore,
  word: string,
  said: readonly Fact[],
  actions: readonly MessageAction[],
): Promise<void> {
  const day = store.day.peek();
  // What was undone is worded in a part that comes after the first load; where it is missing, that it was.
  const words = await import('../words/actions.ts').catch(() => undefined);
  tell(words ? `${word}: ${words.undoneWords(day, said)}` : word, actions);
}
