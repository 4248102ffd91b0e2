import type { AgreementKey } from '../../exchange/sealed/agreement.ts';
import { type DayKeys, newDaySecret } from '../../exchange/sealed/day-keys.ts';
import { keyForThoseWhoStay, keysGiven } from '../../exchange/sealed/new-key.ts';
import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { signStatement } from '../../exchange/sealed/statements.ts';
import { type Writer, type Writers, writersOf } from '../../exchange/sealed/writers.ts';
import { MOST_KEYS } from '../../facts/kinds/writer-admitted.ts';
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

/** The keys of the day, with those that the owner gave to this phone since it joined. */
export async function keysNow(parts: SealingParts, held: HeldKeys, store: DayStore): Promise<DayKeys> {
  const writers = await membersOf(parts, held, store);
  return keysGiven(parts.crypto, held.keys, writers, held.key?.writer ?? null, held.agreement);
}

/** Whether what follows has a key that the removed phone does not have. */
export interface Removed {
  readonly hasNewKey: boolean;
}

/**
 * Puts a phone off the day. What this phone has of it counts; what it says from now on counts nowhere. What follows is
 * sealed with a new key, which is given to whoever stays.
 */
export async function removeMember(
  parts: SealingParts,
  held: HeldKeys & { readonly agreement: AgreementKey },
  store: DayStore,
  { writer, database }: Writer,
  lastOf: LastOf,
): Promise<Result<Removed>> {
  const owned = await ownedBy(parts, held, store);
  if (!owned.ok) return owned;
  const { key, number, writers } = owned.value;
  const { crypto } = parts;
  const hasNewKey = writers.keyNumber < MOST_KEYS;
  const newKey = hasNewKey
    ? await keyForThoseWhoStay(crypto, held.keys.name, writers, held.agreement, writer, newDaySecret(crypto))
    : undefined;
  const counters = store.day
    .peek()
    .facts.filter(({ id }) => databaseOf(id) === database)
    .map(({ id }) => counterOf(id));
  const said = {
    kind: 'writer-removed' as const,
    ...{ writer, database, counted: lastOf(writer), upTo: Math.max(0, ...counters) },
    ...(newKey && { newKey }),
  };
  const draft = await signStatement(crypto, held.keys.name, key, number, said);
  const done = store.run(() => ok([draft]));
  return done.ok ? ok({ hasNewKey }) : done;
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
  const writers = await membersOf(parts, held, store);
  const { key } = held;
  if (!key || writers.owner.writer !== key.writer) return fail({ code: 'live-not-owner' });
  return ok({ key, number: writers.said + 1, writers });
}
