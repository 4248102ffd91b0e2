import { newAgreementKey } from '../../exchange/sealed/agreement.ts';
import { hexOf } from '../../exchange/sealed/bytes.ts';
import { type DayKeys, dayKeysOf, FIRST_KEY, newDaySecret, withKey } from '../../exchange/sealed/day-keys.ts';
import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { newWriterKey } from '../../exchange/sealed/signing.ts';
import { signStatement } from '../../exchange/sealed/statements.ts';
import { writersOf } from '../../exchange/sealed/writers.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import type { DayStore } from '../day-store.ts';
import type { HeldKeys, KeyRing } from '../key-ring.ts';
import type { Asking, Invitation } from './join-codes.ts';

const WORD_BYTES = 8;

export const newWord = ({ crypto }: SealingParts): string => hexOf(crypto.random(WORD_BYTES));

/** The keys of the open day; made now, with this phone as its owner, if nobody has shared it yet. */
export async function keysToShare(
  parts: SealingParts,
  ring: KeyRing,
  app: AppStore,
  store: DayStore,
): Promise<HeldKeys> {
  const day = store.day.peek().id;
  const known = await ring.read(day);
  if (known) return known;
  const secret = newDaySecret(parts.crypto);
  const key = await newWriterKey(parts.crypto);
  const held = {
    ...{ secret, keys: await dayKeysOf(parts.crypto, secret), key, firstOwner: key.publicKey },
    agreement: await newAgreementKey(parts.crypto),
  };
  await ring.keep(day, held);
  await admit(parts, held, store, askingOf(app, held), 'owner');
  return held;
}

/**
 * Keeps what an invitation gives. An onlooker has no key to write with; another phone has one of its own, and shares
 * nothing until the owner admits it.
 */
export async function accept(
  { crypto }: SealingParts,
  ring: KeyRing,
  { day, secrets, firstOwner, offer, word }: Invitation,
): Promise<HeldKeys> {
  const known = await ring.read(day);
  const secret = new Uint8Array(secrets.get(FIRST_KEY)!);
  const first = await dayKeysOf(crypto, secret);
  const isSame = known?.keys.name === first.name;
  if (known && offer === 'onlooker' && !isSame) return known;
  const keys = await withSecrets({ crypto }, isSame ? known.keys : first, secrets);
  const reads = { ...known, secret, keys, firstOwner };
  const held =
    offer === 'onlooker'
      ? { ...reads, key: known?.key ?? null }
      : {
          ...reads,
          // A key that was admitted once is the same phone's still.
          key: known?.key ?? (await newWriterKey(crypto)),
          agreement: known?.agreement ?? (await newAgreementKey(crypto)),
          word,
        };
  await ring.keep(day, held);
  return held;
}

/** The keys with those that this phone was not given yet. */
async function withSecrets(
  { crypto }: Pick<SealingParts, 'crypto'>,
  keys: DayKeys,
  secrets: ReadonlyMap<number, Uint8Array>,
): Promise<DayKeys> {
  let all = keys;
  for (const [number, secret] of secrets) all = await withKey(crypto, all, number, new Uint8Array(secret));
  return all;
}

/** What this phone says of itself to be admitted. */
export function askingOf(app: AppStore, { key, agreement, word = '' }: HeldKeys): Asking {
  const { name = '', job = '' } = app.parts.holder?.read() ?? {};
  const { database } = app.parts.journal.state;
  return { key: key?.publicKey ?? '', agreement: agreement?.publicKey, word, database, name, job };
}

/** Lets a phone write, as the day's owner. Fails with `live-not-owner`. */
export async function admit(
  { crypto }: SealingParts,
  { keys, key, firstOwner }: HeldKeys,
  store: DayStore,
  asking: Asking,
  role: 'owner' | 'writer' = 'writer',
): Promise<Result<string>> {
  const { facts } = store.day.peek();
  const writers = await writersOf(crypto, keys.name, firstOwner, facts);
  if (!key || writers.owner.writer !== key.writer) return fail({ code: 'live-not-owner' });
  const { word: _, ...of } = asking;
  const said = { kind: 'writer-admitted' as const, role, ...of };
  const draft = await signStatement(crypto, keys.name, key, writers.said + 1, said);
  const done = store.run(() => ok([draft]));
  return done.ok ? ok(asking.name) : done;
}
