import { bytesOfHex, hexOf } from '../../exchange/sealed/bytes.ts';
import { dayKeysOf, newDaySecret, SECRET_BYTES } from '../../exchange/sealed/day-keys.ts';
import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { newWriterKey, PUBLIC_KEY, type PublicKey } from '../../exchange/sealed/signing.ts';
import { signStatement } from '../../exchange/sealed/statements.ts';
import { writersOf } from '../../exchange/sealed/writers.ts';
import { type DayId, idText } from '../../facts/kinds/envelope.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import type { DayStore } from '../day-store.ts';
import type { HeldKeys, KeyRing } from '../key-ring.ts';
import type { LogPlace } from '../live-places.ts';
import { placeCode, readPlaceCode } from './place-code.ts';

/** What a phone needs of another to read its day. Whoever photographs the code has it too. */
export interface Invitation {
  readonly day: DayId;
  readonly secret: Uint8Array;
  readonly firstOwner: PublicKey;
  readonly place: LogPlace;
}

/** A phone that would write: what its owner must know of it. */
export interface Asking {
  readonly key: PublicKey;
  readonly database: string;
  readonly name: string;
  readonly job: string;
}

const INVITES = 'rollbook-join';
const ASKS = 'rollbook-write';
const DATABASE = /^[0-9a-z]{6}$/;
const LONGEST = 200;

export const invitationCode = ({ day, secret, firstOwner, place }: Invitation): string =>
  [INVITES, day, hexOf(secret), firstOwner, placeCode(place)].join(' ');

/** Null for any other code. */
export function readInvitation(text: string): Invitation | null {
  const [first, day = '', secret = '', firstOwner = '', ...where] = text.trim().split(/\s+/);
  const place = readPlaceCode(where.join(' '));
  const isSecret = /^[0-9a-f]+$/.test(secret) && secret.length === SECRET_BYTES * 2;
  if (first !== INVITES || !idText.safeParse(day).success || !isSecret || !PUBLIC_KEY.test(firstOwner))
    return null;
  return place && { day, secret: bytesOfHex(secret), firstOwner, place };
}

export const askingCode = ({ key, database, name, job }: Asking): string =>
  [ASKS, key, database, encodeURIComponent(name), encodeURIComponent(job)].join(' ').trim();

/** Null for any other code. */
export function readAsking(text: string): Asking | null {
  const [first, key = '', database = '', name = '', job = ''] = text.trim().split(' ');
  if (first !== ASKS || !PUBLIC_KEY.test(key) || !DATABASE.test(database)) return null;
  try {
    const [who, does] = [decodeURIComponent(name), decodeURIComponent(job)];
    return { key, database, name: who.slice(0, LONGEST), job: does.slice(0, LONGEST) };
  } catch {
    return null;
  }
}

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
  const held = { secret, keys: await dayKeysOf(parts.crypto, secret), key, firstOwner: key.publicKey };
  await ring.keep(day, held);
  await admit(parts, held, store, { ...askingOf(app, held), key: key.publicKey }, 'owner');
  return held;
}

/** Keeps what an invitation gives, with a key of this phone's own: until the owner admits it, it reads only. */
export async function accept(
  { crypto }: SealingParts,
  ring: KeyRing,
  { day, secret, firstOwner }: Invitation,
): Promise<HeldKeys> {
  const known = await ring.read(day);
  if (known) return known;
  const bytes = new Uint8Array(secret);
  const key = await newWriterKey(crypto);
  const held = { secret: bytes, keys: await dayKeysOf(crypto, bytes), key, firstOwner };
  await ring.keep(day, held);
  return held;
}

/** What this phone says of itself to be admitted. */
export function askingOf(app: AppStore, { key }: HeldKeys): Asking {
  const { name = '', job = '' } = app.parts.holder?.read() ?? {};
  return { key: key?.publicKey ?? '', database: app.parts.journal.state.database, name, job };
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
  const said = { kind: 'writer-admitted' as const, role, ...asking };
  const draft = await signStatement(crypto, keys.name, key, writers.said + 1, said);
  const done = store.run(() => ok([draft]));
  return done.ok ? ok(asking.name) : done;
}
