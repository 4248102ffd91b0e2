import type { AppStore } from '../../app/app-store.ts';
import type { Journal } from '../../app/ports.ts';
import { type Copies, type PutBack, putBackFacts } from '../../app/put-back.ts';
import type { DayId, Envelope } from '../../facts/envelope.ts';
import { route } from '../route.ts';
import { trouble } from '../saying.ts';
import { backAfterLossWords, comingBackWords, onlyCopiedWords } from '../words/put-back.ts';

export interface Phone {
  readonly app: AppStore;
  /** The database alone: what comes from the copies need not be copied again. */
  readonly journal: Journal;
  readonly copies: Copies;
  /** Has this window look again at a day. */
  readonly lookAgain: (day: DayId) => void;
}

/** All that came back since the start. */
const back = { days: 0, fresh: 0, checked: 0 };

/** Days between two looks of the list at what has come back: every look draws it anew. */
const DAYS_A_LOOK = 20;

/**
 * Makes the copies and the database say the same of every day, or of so many days: first the one at the address, then the
 * one written last. Says what came back, because whoever tapped it may have missed it on the screen, and tapped again.
 */
export async function settleCopies(phone: Phone, most = Number.POSITIVE_INFINITY): Promise<void> {
  const { app, journal, copies } = phone;
  const lost = journal.state.begun === true;
  const days = await copies.days();
  const { length } = days;
  for (const [at, day] of firstAtAddress(days).slice(0, most).entries()) {
    const { fresh, checked } = await putBack(journal, day, await copies.settle(day));
    if (fresh === 0) continue;
    back.days += 1;
    back.fresh += fresh;
    back.checked += checked;
    app.parts.neighbours.tell(day);
    phone.lookAgain(day);
    trouble.value = lost ? comingBackWords() : onlyCopiedWords(back);
    if (at % DAYS_A_LOOK === 0) await app.refreshDays();
  }
  if (back.fresh === 0 || most < length) return;
  await app.refreshDays();
  if (lost) trouble.value = backAfterLossWords(back);
}

function firstAtAddress(days: readonly DayId[]): readonly DayId[] {
  const where = route.peek();
  const wanted = where.at === 'day' ? where.day : '';
  return [...days.filter((day) => day === wanted), ...days.filter((day) => day !== wanted)];
}

/** A day for which there is no room now is come upon again at the next start. */
async function putBack(journal: Journal, day: DayId, facts: readonly Envelope[]): Promise<PutBack> {
  try {
    return facts.length === 0 ? { fresh: 0, checked: 0 } : await putBackFacts(journal, day, facts);
  } catch {
    return { fresh: facts.length, checked: 0 };
  }
}
