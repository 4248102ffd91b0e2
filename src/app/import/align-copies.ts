import type { DayId } from '../../facts/kinds/envelope.ts';
import type { AppStore } from '../app-store.ts';
import type { Journal } from '../ports.ts';
import { alignDays, type Copies, type Restored } from '../restore.ts';

export interface Phone {
  readonly app: AppStore;
  /** The database alone, without the copies. */
  readonly journal: Journal;
  readonly copies: Copies;
  /** Has this window look again at a day. */
  readonly lookAgain: (day: DayId) => void;
}

/** What came back since the start, of each day that had anything missing. */
export interface CameBack {
  readonly days: readonly Restored[];
  /** The browser had lost the whole database. */
  readonly isAfterLoss: boolean;
  /** Every day was looked at. */
  readonly isAll: boolean;
}

const back = new Map<DayId, Restored>();

/** Days between two looks of the list at what has come back: every look draws it anew. */
const DAYS_A_LOOK = 20;

/**
 * Makes the copies and the database say the same of every day, or of so many days: first the one that is wanted, then the
 * one written last. Tells with every day what has come back so far.
 */
export async function* alignCopies(
  { app, journal, copies, lookAgain }: Phone,
  wanted: () => DayId | undefined,
  most: number,
): AsyncGenerator<CameBack> {
  const cameBack = (isAll: boolean): CameBack => ({
    days: [...back.values()],
    isAfterLoss: journal.state.begun === true,
    isAll,
  });
  await copies.finishForgetting();
  const copied = await copies.days();
  const first = wanted();
  const days = [...copied.filter((day) => day === first), ...copied.filter((day) => day !== first)];
  for await (const [day, came] of alignDays(journal, copies, days.slice(0, most))) {
    back.set(day, came);
    app.parts.neighbours.tell(day);
    lookAgain(day);
    yield cameBack(false);
    if (back.size % DAYS_A_LOOK === 1) await app.refreshDays();
  }
  if (back.size === 0 || most < days.length) return;
  await app.refreshDays();
  yield cameBack(true);
}
