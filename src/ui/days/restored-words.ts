import type { Restored } from '../../app/restore.ts';
import { countOf } from '../words/chain.ts';

const LOST = 'The browser lost its database and started a new one.';

/** While the days of a lost database are being recovered. */
export const comingBackWords = (): string => `${LOST} Days come back from the second copy, newest first.`;

/** Once all are recovered; `days` says what was recovered for each. */
export function backAfterLossWords(days: readonly Restored[]): string {
  const sum = sumOf(days);
  const { fresh, checked, unchecked } = sum;
  const all = checked === fresh && unchecked === 0 ? 'all' : String(checked - unchecked);
  return [
    `${LOST} Restored from the second copy: ${countOf(fresh, 'entry', 'entries')} of`,
    `${countOf(days.length, 'day')}: ${all} checked one by one.`,
    ...doubtWords(sum),
  ].join(' ');
}

/** For actions that only the copy had after a kill; `days` says what was recovered for each. */
export function onlyCopiedWords(days: readonly Restored[]): string {
  const sum = sumOf(days);
  const { fresh, checked } = sum;
  const where = 'in the second copy only, as after a crash';
  const back =
    checked === fresh
      ? `${countOf(fresh, 'entry was', 'entries were')} ${where}, and came back. Look at the last take.`
      : `${countOf(fresh, 'entry is', 'entries are')} ${where}.`;
  return [...(fresh > 0 ? [back] : []), ...doubtWords(sum)].join(' ');
}

function sumOf(days: readonly Restored[]): Required<Restored> {
  const sum = (field: keyof Restored): number => days.reduce((total, day) => total + (day[field] ?? 0), 0);
  return {
    fresh: sum('fresh'),
    checked: sum('checked'),
    unchecked: sum('unchecked'),
    damaged: sum('damaged'),
  };
}

/** What is missing for now, what may be wrong, and what is lost. */
function doubtWords({ fresh, checked, unchecked, damaged }: Required<Restored>): string[] {
  const words: string[] = [];
  if (fresh > checked)
    words.push(
      `${fresh - checked} of them are not saved yet: the phone is full. They are tried again at the next start.`,
    );
  if (unchecked > 0)
    words.push(
      `${countOf(unchecked, 'entry was', 'entries were')} copied by an older version, which wrote no checks: look ${unchecked === 1 ? 'it' : 'them'} over.`,
    );
  if (damaged > 0)
    words.push(
      `${countOf(damaged, 'entry was', 'entries were')} damaged in the copy and could not be restored. Import a day file kept elsewhere: it repairs the day.`,
    );
  return words;
}
