import type { Day } from '../../day/model.ts';
import type { Recording } from '../../wave/recording/recordings.ts';

const DAY_MS = 86_400_000;

/** The date in the file is neither the day's nor the next, when a night may end. */
export function isOfAnotherDay({ header }: Day, { files }: Recording): boolean {
  const date = files[0]!.bext?.originationDate;
  if (date === undefined || header.date === '') return false;
  const days = (Date.parse(`${date}T12:00:00Z`) - Date.parse(`${header.date}T12:00:00Z`)) / DAY_MS;
  // An invalid date proves nothing.
  return Number.isFinite(days) && days !== 0 && days !== 1;
}
