import { countOf } from './chain.ts';

interface Back {
  readonly days: number;
  readonly fresh: number;
  readonly checked: number;
}

const LOST = 'The browser had lost its database and began a new one.';

/** While the days of a lost database come back. */
export const comingBackWords = (): string =>
  `${LOST} The days come back from the copy beside it, the last one first.`;

/** When all of them are there. */
export const backAfterLossWords = (back: Back): string =>
  [
    `${LOST} Put back from the copy beside it: ${countOf(back.fresh, 'entry', 'entries')} of`,
    `${countOf(back.days, 'day')}: ${back.checked === back.fresh ? 'all' : back.checked} checked one by one.`,
    ...notThereYet(back),
  ].join(' ');

/** What a kill had left in the copy alone. */
export function onlyCopiedWords(back: Back): string {
  const where = 'in the second copy only, as after a crash';
  return back.checked === back.fresh
    ? `${countOf(back.fresh, 'entry was', 'entries were')} ${where}, and came back. Look at the last take.`
    : [`${countOf(back.fresh, 'entry is', 'entries are')} ${where}.`, ...notThereYet(back)].join(' ');
}

const notThereYet = ({ fresh, checked }: Back): string[] =>
  fresh > checked
    ? [`${fresh - checked} of them found no room yet; they are tried again at the next start.`]
    : [];
