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
import type { HeldKeys, KeyRing, Offer } from '../key-ring.ts';
import type { LogPlace } from '../live-places.ts';
import { placeCode, readPlaceCode } from './place-code.ts';

/** What a phone needs of another to read its day. Whoever photographs the code has it too. */
export interface Invitation {
  readonly day: DayId;
  readonly secret: Uint8Array;
  readonly firstOwner: PublicKey;
  readonly offer: Offer;
  /** To ask with, once; empty for an onlooker. */
  readonly word: string;
  readonly place: LogPlace;
}

/** A phone that would write: what its owner must know of it. */
export interface Asking {
  readonly key: PublicKey;
  /** Of the code that it joined with. */
  readonly word: string;
  readonly database: string;
  readonly name: string;
  readonly job: string;
}

const INVITES = 'rollbook-join';
const ASKS = 'rollbook-write';
const OFFERS: readonly string[] = ['writer', 'onlooker', 'owner'] satisfies Offer[];
const WORD = /^[0-9a-f]{16}$/;
const WORD_BYTES = 8;
/** Stands for no word. */
const NONE = '-';
const DATABASE = /^[0-9a-z]{6}$/;
const LONGEST = 200;

export const newWord = ({ crypto }: SealingParts): string => hexOf(crypto.random(WORD_BYTES));

export const invitationCode = ({ day, secret, firstOwner, offer, word, place }: Invitation): string =>
  [INVITES, day, offer, word || NONE, hexOf(secret), firstOwner, placeCode(place)].join(' ');

/** Null for any other code. */
export function readInvitation(text: string): Invitation | null {
  const [first, day = '', offer = '', word = '', secret = '', firstOwner = '', ...where] = text
    .trim()
    .split(/\s+/);
  const place = readPlaceCode(where.join(' '));
  const isSecret = /^[0-9a-f]+$/.test(secret) && secret.length === SECRET_BYTES * 2;
  if (first !== INVITES || !idText.safeParse(day).success || !isSecret || !PUBLIC_KEY.test(firstOwner))
    return null;
  if (!OFFERS.includes(offer) || !(offer === 'onlooker' ? word === NONE : WORD.test(word))) return null;
  const said = { offer: offer as Offer, word: word === NONE ? '' : word };
  return place && { day, secret: bytesOfHex(secret), firstOwner, ...said, place };
}

export const askingCode = ({ key, word, database, name, job }: Asking): string =>
  [ASKS, key, word, database, encodeURIComponent(name), encodeURIComponent(job)].join(' ').trim();

/** Null for any other code. */
export function readAsking(text: string): Asking | null {
  const [first, key = '', word = '', database = '', name = '', job = ''] = text.trim().split(' ');
  if (first !== ASKS || !PUBLIC_KEY.test(key) || !WORD.test(word) || !DATABASE.test(database)) return null;
  try {
    const [who, does] = [decodeURIComponent(name), decodeURIComponent(job)];
    return { key, word, database, name: who.slice(0, LONGEST), job: does.slice(0, LONGEST) };
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
  { day, secret, firstOwner, offer, word }: Invitation,
): Promise<HeldKeys> {
  const known = await ring.read(day);
  if (known && offer === 'onlooker') return known;
  const bytes = new Uint8Array(secret);
  // A key that was admitted once is the same phone's still.
  const key = offer === 'onlooker' ? null : (known?.key ?? (await newWriterKey(crypto)));
  const held = { ...known, secret: bytes, keys: await dayKeysOf(crypto, bytes), key, firstOwner, word };
  await ring.keep(day, held);
  return held;
}

/** What this phone says of itself to be admitted. */
export function askingOf(app: AppStore, { key, word = '' }: HeldKeys): Asking {
  const { name = '', job = '' } = app.parts.holder?.read() ?? {};
  return { key: key?.publicKey ?? '', word, database: app.parts.journal.state.database, name, job };
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
