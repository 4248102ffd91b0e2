import type { TakeSlate } from '../../facts/kinds/take-logged.ts';
import { plain } from '../cast-in-order.ts';
import type { Day, Take, TakeId } from '../model.ts';
import { slateText, takeText } from '../slate.ts';
import { isSlated, takesInOrder } from '../takes.ts';
import { answersAtTake } from './answers.ts';
import { rolledTracks } from './rolled-parts.ts';

/** Whether the search text is in a word, ignoring case and accents. An empty search matches all. */
export function isInWords(words: readonly string[], typed: string): boolean {
  const wanted = plain(typed.trim());
  return words.some((word) => plain(word).includes(wanted));
}

/** The searchable text of a take: its slate and number, its notes, and the names on its tracks. */
export const wordsOfTake = (day: Day, take: Take): string[] => [
  takeText(take),
  slateText(take.slate),
  ...take.notes.map(({ text }) => text),
  ...rolledTracks(answersAtTake(day, take.id)).flatMap(({ track, name }) => (track.mix ? [] : name)),
];

/** Every slate with a take, latest first, each with its last take on the line. */
export function slatesOnLine(day: Day): { readonly slate: TakeSlate; readonly take: TakeId }[] {
  const found = new Map<string, { slate: TakeSlate; take: TakeId }>();
  for (const { kind, slate, id } of takesInOrder(day).toReversed()) {
    if (isSlated(kind) && !found.has(slateText(slate))) found.set(slateText(slate), { slate, take: id });
  }
  return [...found.values()];
}
