import type { Day } from '../../day/model.ts';
import { sealingOf } from '../../exchange/sealed/day-keys.ts';
import { Intake } from '../../exchange/sealed/intake.ts';
import { keyToSealWith, newKeysIn } from '../../exchange/sealed/new-key.ts';
import {
  type ChainEnd,
  hashOfBatch,
  NO_BATCH,
  readSealed,
  type SealingParts,
  sealBatch,
} from '../../exchange/sealed/seal.ts';
import { takeApart } from '../../exchange/sealed/sealed-bytes.ts';
import { databaseOf, type FactId } from '../../shared/ids.ts';
import type { HeldKeys } from '../key-ring.ts';
import type { BatchBook } from './book.ts';
import type { Batch } from './log.ts';
import { noteRefusal, type SealedProblem } from './refusals.ts';
import type { Opened, Sealer } from './sealer.ts';

/** What the door must know of a day. */
export interface SealedDay {
  readonly day: { peek(): Pick<Day, 'id' | 'facts' | 'unknown'> };
}

/** Seals with the day's keys, and opens at the one door for sealed batches. */
export async function sealedSealer(
  parts: SealingParts,
  { keys, key, firstOwner, agreement }: HeldKeys,
  store: SealedDay,
  database: string,
  book: BatchBook,
  note: (problem: SealedProblem) => void = noteRefusal,
): Promise<Sealer> {
  const hashOf = async (batch: Pick<Batch, 'bytes'>): Promise<string | undefined> => {
    const read = takeApart(batch.bytes);
    return read.ok ? hashOfBatch(parts.crypto, read.value.signedBytes) : undefined;
  };
  const { facts, unknown } = store.day.peek();
  const intake = new Intake(parts, {
    day: store.day.peek().id,
    keys,
    own: key && agreement ? { writer: key.writer, agreement } : undefined,
    firstOwner,
    facts: [...facts, ...unknown],
    ends: await endsOf(book, hashOf),
    hashOf: async (writer, number) => {
      const kept = book.find({ writer, number });
      return kept && hashOf(kept);
    },
  });
  /** By entry, the new keys that this phone said and that no batch of it holds yet. */
  let unsaid = new Map<FactId, number>();
  const lacksKey = async () => !sealingOf(await intake.keys(), (await intake.writers()).keyNumber);
  const standing = async () => (key ? (await intake.writers()).byName.get(key.writer) : undefined);

  return {
    day: keys.name,
    writer: key?.writer ?? null,
    async maySeal(all) {
      intake.learn(store.day.peek().facts);
      const own = await standing();
      const { number: last } = intake.ends.get(key?.writer ?? '') ?? NO_BATCH;
      // A phone that handed the day over still gives what it said before, and that it did.
      const isFinishing = own?.role === 'onlooker' && last < (own.counted ?? 0);
      if (own?.role !== 'owner' && own?.role !== 'writer' && !isFinishing) return [];
      if (await lacksKey()) return [];
      // The owner speaks for those who have no key; the others speak for themselves.
      const { byName } = await intake.writers();
      const theirs = new Set([...byName.values()].map((writer) => writer.database));
      const may = all.filter(
        ({ id }) => databaseOf(id) === database || (own.owned && !theirs.has(databaseOf(id))),
      );
      unsaid = newKeysIn(may);
      return may;
    },
    isAdmitted: async () => (await standing()) !== undefined,
    lacksKey,
    endsBatch: ({ id }) => unsaid.has(id),
    async seal(sealing) {
      const last = intake.ends.get(key!.writer) ?? NO_BATCH;
      const all = await intake.keys();
      const number = keyToSealWith(all, unsaid);
      for (const { id } of sealing) unsaid.delete(id);
      const batch = await sealBatch(parts, all, key!, last, sealing, number);
      intake.noteOwn(batch);
      return batch;
    },
    claimed(bytes) {
      const read = readSealed(keys, bytes);
      if (!read.ok) note(read.problem);
      return read.ok ? read.value : null;
    },
    async open(bytes): Promise<Opened> {
      const taken = await intake.take(bytes);
      if (!taken.ok) {
        note(taken.problem);
        return taken.problem.code === 'sealed-number-twice' ? 'number-twice' : 'refused';
      }
      const { value } = taken;
      if ('waits' in value) return value;
      for (const { problem } of value.refused) note(problem);
      return { opened: value.opened, refused: value.refused.map(({ waited }) => waited) };
    },
  };
}

/** The last batch of every writer that is on this phone. */
async function endsOf(
  book: BatchBook,
  hashOf: (batch: Pick<Batch, 'bytes'>) => Promise<string | undefined>,
): Promise<Map<string, ChainEnd>> {
  const ends = new Map<string, ChainEnd>();
  const last = new Map<string, Batch>();
  for (const batch of book.all)
    if (batch.number > (last.get(batch.writer)?.number ?? 0)) last.set(batch.writer, batch);
  for (const [writer, batch] of last) {
    const hash = await hashOf(batch);
    if (hash !== undefined) ends.set(writer, { number: batch.number, hash });
  }
  return ends;
}
