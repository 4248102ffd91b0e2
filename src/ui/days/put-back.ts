import type { AppStore } from '../../app/app-store.ts';
import type { Journal } from '../../app/ports.ts';
import { type Copies, type PutBack, settleDays } from '../../app/put-back.ts';
import type { DayId } from '../../day/model.ts';
import { trouble } from '../parts/messages.ts';
import { route } from '../route.ts';
import { backAfterLossWords, comingBackWords, onlyCopiedWords } from '../words/put-back.ts';

export interface Phone {
  readonly app: AppStore;
  /** The database alone, without the copies. */
  readonly journal: Journal;
  readonly copies: Copies;
  /** Has this window look again at a day. */
  readonly lookAgain: (day: DayId) => void;
}

/** What came back since the start, of each day that had anything missing. */
const back = new Map<DayId, PutBack>();

/** Days between two looks of the list at what has come back: every look draws it anew. */
const DAYS_A_LOOK = 20;

/**
 * Makes the copies and the database say the same of every day, or of so many days: first the one at the address, then the
 * one written last. Says what came back, because whoever tapped it may have missed it on the screen, and tapped again.
 */
export async function settleCopies(phone: Phone, most = Number.POSITIVE_INFINITY): Promise<void> {
  const { app, journal, copies, lookAgain } = phone;
  const lost = journal.state.begun === true;
  await copies.finishForgetting();
  const days = firstAtAddress(await copies.days());
  for await (const [day, came] of settleDays(journal, copies, days.slice(0, most))) {
    back.set(day, came);
    app.parts.neighbours.tell(day);
    lookAgain(day);
    if (!lost) trouble.value = onlyCopiedWords([...back.values()]);
    // Once: whoever has put it away need not see it again with every day.
    else if (back.size === 1) trouble.value = comingBackWords();
    if (back.size % DAYS_A_LOOK === 1) await app.refreshDays();
  }
  if (back.size === 0 || most < days.length) return;
  await app.refreshDays();
  if (lost) trouble.value = backAfterLossWords([...back.values()]);
}

function firstAtAddress(days: readonly DayId[]): readonly DayId[] {
  const where = route.peek();
  const wanted = where.at === 'day' ? where.day : '';
  return [...days.filter((day) => day === wanted), ...days.filter((day) => day !== wanted)];
}
