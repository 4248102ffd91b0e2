import type { AppStore } from '../../app/app-store.ts';
import { putBackFacts } from '../../app/put-back.ts';
import { readAsFarAsPossible } from '../../app/regain.ts';
import { writeDayFile } from '../../facts/day-file.ts';
import type { DayId, Envelope } from '../../facts/envelope.ts';
import { trouble } from '../saying.ts';
import { countOf } from '../words/chain.ts';
import { regainedWords } from '../words/regained.ts';

/** Puts back what the copies beside a lost database hold, by the way that day files go, and says what was regained. */
export async function putBack(app: AppStore, copies: ReadonlyMap<DayId, readonly Envelope[]>): Promise<void> {
  const reads = [...copies].map(([day, facts]) =>
    readAsFarAsPossible('The copy beside the database', writeDayFile(day, '', facts)),
  );
  const regained = await app.regain(reads);
  trouble.value = `The browser had lost its database and began a new one. Put back from the copy beside it: ${regainedWords(reads, regained)}`;
}

/**
 * Puts back what had reached the copy and not the database when the app was killed, and says so: whoever tapped it may have
 * missed it on the screen, and tapped again.
 */
export async function putBackActions(
  app: AppStore,
  day: DayId,
  facts: readonly Envelope[],
  lookAgain: (day: DayId) => void,
): Promise<void> {
  const { journal, neighbours } = app.parts;
  const fresh = await putBackFacts(journal, day, facts);
  if (fresh === 0) return;
  neighbours.tell(day);
  lookAgain(day);
  await app.refreshDays();
  const were = countOf(fresh, 'entry was', 'entries were');
  const back = `${were} in the second copy only, as after a crash, and came back. Look at the last take.`;
  trouble.value = trouble.peek() ? `${trouble.peek()} ${back}` : back;
}
