import type { Envelope } from '../../facts/kinds/envelope.ts';
import type { BatchBook } from './book.ts';
import type { DayFacts } from './day-facts.ts';
import type { Sealer } from './sealer.ts';

/** Of the text in one batch: what is sealed is compressed, and stays below what a server accepts. */
const MOST_TEXT = 60_000;

export interface SealedNew {
  /** False if this phone has said something, and the owner of the day has not let it write. */
  readonly isAdmitted: boolean;
  /** The day has a newer key than this phone was given: it seals nothing. */
  readonly lacksKey: boolean;
}

/** Seals what is on the day and in no batch: said here, or taken in from a file or from codes. */
export async function sealNew(sealer: Sealer, book: BatchBook, facts: DayFacts): Promise<SealedNew> {
  const lacksKey = await sealer.lacksKey();
  if (sealer.writer === null) return { isAdmitted: true, lacksKey };
  const fresh = await facts.without((id) => book.covers(id));
  const isAdmitted = fresh.length === 0 || (await sealer.isAdmitted());
  for (const some of portions(await sealer.maySeal(fresh), sealer.endsBatch)) {
    const batch = await sealer.seal(some);
    const ids = some.map(({ id }) => id);
    book.add(batch, ids, null);
  }
  // On the disk before it is given: a number is never used for other bytes.
  await book.save();
  return { isAdmitted, lacksKey };
}

function portions(facts: readonly Envelope[], isLast: (fact: Envelope) => boolean): Envelope[][] {
  const all: Envelope[][] = [];
  let size = Number.POSITIVE_INFINITY;
  for (const fact of facts) {
    const more = JSON.stringify(fact).length;
    if (size + more > MOST_TEXT) {
      all.push([]);
      size = 0;
    }
    all.at(-1)!.push(fact);
    size = isLast(fact) ? Number.POSITIVE_INFINITY : size + more;
  }
  return all;
}
