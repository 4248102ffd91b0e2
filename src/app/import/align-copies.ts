import type { DayId } from '../../facts/kinds/envelope.ts';
import type { AppStore } from '../app-store.ts';
import type { Journal } from '../ports.ts';
import { alignDays, type Copies, type Restored } from '../restore.ts';

export interface Phone {
  readonly app: AppStore;
  /** The database alone, without the copies. */
  readonly journal: Journal;
  readonly copies: Copies;
  /** Makes this window read a day again. */
  readonly lookAgain: (day: DayId) => void;
}

/** What was recovered since the start, for each day that had facts missing. */
export interface CameBack {
  readonly days: readonly Restored[];
  /** The browser had lost the whole database. */
  readonly isAfterLoss: boolean;
  /** Every day was checked. */
  readonly isAll: boolean;
}

const back = new Map<DayId, Restored>();

/** How many recovered days between redraws of the list. */
const DAYS_A_LOOK = 20;

/**
 * Reconciles the copies and the database for all days, or at most so many: the wanted one first, then the
 * latest. Yields after each day what was recovered so far.
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
