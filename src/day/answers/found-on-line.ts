import type { TakeSlate } from '../../facts/kinds/take-logged.ts';
import { plain } from '../cast-in-order.ts';
import type { Day, Take, TakeId } from '../model.ts';
import { slateText, takeText } from '../slate.ts';
import { isSlated, takesInOrder } from '../takes.ts';
import { answersAtTake } from './answers.ts';

/** Whether what was typed is in one of the words, whatever the case and the accents. Nothing typed finds everything. */
export function isInWords(words: readonly string[], typed: string): boolean {
  const wanted = plain(typed.trim());
  return words.some((word) => plain(word).includes(wanted));
}

/** What a take can be found by: its slate and number, its notes, and the names on its tracks. */
export const wordsOfTake = (day: Day, take: Take): string[] => [
  takeText(take),
  slateText(take.slate),
  ...take.notes.map(({ text }) => text),
  ...answersAtTake(day, take.id).tracks.flatMap(({ track, name }) => (track.mix ? [] : name)),
];

/** Every slate that has a take, the last one first, with the last take of it on the line. */
export function slatesOnLine(day: Day): { readonly slate: TakeSlate; readonly take: TakeId }[] {
  const found = new Map<string, { slate: TakeSlate; take: TakeId }>();
  for (const { kind, slate, id } of takesInOrder(day).toReversed()) {
    if (isSlated(kind) && !found.has(slateText(slate))) found.set(slateText(slate), { slate, take: id });
  }
  return [...found.values()];
}
