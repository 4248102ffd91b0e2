import type { AppStore } from '../../app/app-store.ts';
import { readAsFarAsPossible } from '../../app/regain.ts';
import { writeDayFile } from '../../facts/day-file.ts';
import type { DayId, Envelope } from '../../facts/envelope.ts';
import { trouble } from '../saying.ts';
import { regainedWords } from '../words/regained.ts';

/** Puts back what the copies beside a lost database hold, by the way that day files go, and says what was regained. */
export async function putBack(app: AppStore, copies: ReadonlyMap<DayId, readonly Envelope[]>): Promise<void> {
  const reads = [...copies].map(([day, facts]) =>
    readAsFarAsPossible('The copy beside the database', writeDayFile(day, '', facts)),
  );
  const regained = await app.regain(reads);
  trouble.value = `The browser had lost its database and began a new one. Put back from the copy beside it: ${regainedWords(reads, regained)}`;
}
