import type { PutBack } from '../../app/put-back.ts';
import { countOf } from './chain.ts';

const LOST = 'The browser had lost its database and began a new one.';

/** While the days of a lost database come back. */
export const comingBackWords = (): string =>
  `${LOST} The days come back from the copy beside it, the last one first.`;

/** When all of them are there; `days` has what came back of each. */
export function backAfterLossWords(days: readonly PutBack[]): string {
  const { fresh, checked } = sumOf(days);
  return [
    `${LOST} Put back from the copy beside it: ${countOf(fresh, 'entry', 'entries')} of`,
    `${countOf(days.length, 'day')}: ${checked === fresh ? 'all' : checked} checked one by one.`,
    ...noRoomWords(fresh - checked),
  ].join(' ');
}

/** What a kill had left in the copy alone; `days` has what came back of each. */
export function onlyCopiedWords(days: readonly PutBack[]): string {
  const { fresh, checked } = sumOf(days);
  const where = 'in the second copy only, as after a crash';
  return checked === fresh
    ? `${countOf(fresh, 'entry was', 'entries were')} ${where}, and came back. Look at the last take.`
    : [`${countOf(fresh, 'entry is', 'entries are')} ${where}.`, ...noRoomWords(fresh - checked)].join(' ');
}

const sumOf = (days: readonly PutBack[]): PutBack => ({
  fresh: days.reduce((sum, { fresh }) => sum + fresh, 0),
  checked: days.reduce((sum, { checked }) => sum + checked, 0),
});

const noRoomWords = (entries: number): string[] =>
  entries > 0 ? [`${entries} of them found no room yet; they are tried again at the next start.`] : [];
