import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { signStatement } from '../../exchange/sealed/statements.ts';
import { type Writer, type Writers, writersOf } from '../../exchange/sealed/writers.ts';
import { counterOf, databaseOf } from '../../shared/ids.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { DayStore } from '../day-store.ts';
import type { HeldKeys } from '../key-ring.ts';

/** The number of the last batch of a writer that is on this phone. */
export type LastOf = (writer: string) => number;

export const membersOf = (
  { crypto }: SealingParts,
  { keys, firstOwner }: HeldKeys,
  store: DayStore,
): Promise<Writers> => writersOf(crypto, keys.name, firstOwner, store.day.peek().facts);

/** Puts a phone off the day. What this phone has of it counts; what it says from now on counts nowhere. */
export async function removeMember(
  parts: SealingParts,
  held: HeldKeys,
  store: DayStore,
  { writer, database }: Writer,
  lastOf: LastOf,
): Promise<Result<unknown>> {
  const owned = await ownedBy(parts, held, store);
  if (!owned.ok) return owned;
  const counters = store.day
    .peek()
    .facts.filter(({ id }) => databaseOf(id) === database)
    .map(({ id }) => counterOf(id));
  const said = {
    kind: 'writer-removed' as const,
    ...{ writer, database, counted: lastOf(writer), upTo: Math.max(0, ...counters) },
  };
  const { key, number } = owned.value;
  const draft = await signStatement(parts.crypto, held.keys.name, key, number, said);
  return store.run(() => ok([draft]));
}

/** Of the text in one batch, at least. */
const BATCH_TEXT = 50_000;
/** One that is being sealed, and the one that this goes out with. */
const UNDER_WAY = 2;

/** Hands the day over to a writer: it owns the day from now on, and this phone reads on. */
export async function handOverTo(
  parts: SealingParts,
  held: HeldKeys,
  store: DayStore,
  { writer }: Writer,
  lastOf: LastOf,
): Promise<Result<unknown>> {
  const owned = await ownedBy(parts, held, store);
  if (!owned.ok) return owned;
  const { key, number } = owned.value;
  // Nobody knows yet which batch this goes out with: what waits to be sealed goes first.
  const waiting = Math.ceil(JSON.stringify(store.day.peek().facts).length / BATCH_TEXT);
  const counted = lastOf(key.writer) + waiting + UNDER_WAY;
  const said = { kind: 'day-passed-on' as const, to: writer, counted };
  const draft = await signStatement(parts.crypto, held.keys.name, key, number, said);
  return store.run(() => ok([draft]));
}

/** This phone's key if it owns the day, and the number of its next statement. Fails with `live-not-owner`. */
async function ownedBy(parts: SealingParts, held: HeldKeys, store: DayStore) {
  const { owner, said } = await membersOf(parts, held, store);
  const { key } = held;
  if (!key || owner.writer !== key.writer) return fail({ code: 'live-not-owner' });
  return ok({ key, number: said + 1 });
}
