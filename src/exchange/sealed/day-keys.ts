import { hexOf, utf8 } from './bytes.ts';
import type { Bytes, PlatformKey, SealingCrypto, Subtle } from './sealing-crypto.ts';

/** What a phone needs to read a day. Whoever has the secrets has the rest too. */
export interface DayKeys {
  /**
   * What servers and files call the day, as 32 hexadecimal digits: it comes from the first secret, so nobody can tell
   * which production it is, and it stays whatever keys come later.
   */
  readonly name: string;
  /** The first key: seals and opens; cannot be taken out of the platform. */
  readonly sealing: PlatformKey;
  /** Those that came later, each after a phone was removed, as far as this phone was given them. */
  readonly later?: readonly LaterKey[];
}

/** A key that was made when a phone was removed. The first has the number 1. */
export interface LaterKey {
  readonly number: number;
  /** To let others in. */
  readonly secret: Uint8Array;
  readonly sealing: PlatformKey;
}

export const FIRST_KEY = 1;
export const SECRET_BYTES = 32;
export const DAY_NAME_BYTES = 16;
const KEY_BYTES = 32;

/** The labels keep what is made from one secret apart; another form of batch takes others. */
const SEALING_LABEL = 'rollbook 1 sealing key';
const NAME_LABEL = 'rollbook 1 day name';

/** The secret of a new day, or of a later key of it: 256 random bits. */
export const newDaySecret = (crypto: SealingCrypto): Bytes => crypto.random(SECRET_BYTES);

export async function dayKeysOf(crypto: SealingCrypto, secret: Bytes): Promise<DayKeys> {
  const [sealing, name] = await Promise.all([
    sealingKey(crypto, secret),
    hkdf(crypto.subtle, secret, new Uint8Array(), utf8(NAME_LABEL), DAY_NAME_BYTES),
  ]);
  return { name: hexOf(name), sealing };
}

/** With a later key; one that is known stays as it is. */
export async function withKey(
  crypto: SealingCrypto,
  keys: DayKeys,
  number: number,
  secret: Bytes,
): Promise<DayKeys> {
  if (sealingOf(keys, number)) return keys;
  const later = { number, secret, sealing: await sealingKey(crypto, secret) };
  return { ...keys, later: [...(keys.later ?? []), later].sort((one, other) => one.number - other.number) };
}

/** The key of this number; undefined where this phone was not given it. */
export const sealingOf = ({ sealing, later }: DayKeys, number: number): PlatformKey | undefined =>
  number === FIRST_KEY ? sealing : later?.find((key) => key.number === number)?.sealing;

/** The number of the newest key that this phone has. */
export const newestKey = ({ later }: DayKeys): number => later?.at(-1)?.number ?? FIRST_KEY;

async function sealingKey({ subtle }: SealingCrypto, secret: Bytes): Promise<PlatformKey> {
  const key = await hkdf(subtle, secret, new Uint8Array(), utf8(SEALING_LABEL), KEY_BYTES);
  return subtle.importKey('raw', key, 'AES-GCM', false, ['encrypt', 'decrypt']);
}

/** HKDF with SHA-256 (RFC 5869). */
export async function hkdf(
  subtle: Subtle,
  secret: Bytes,
  salt: Bytes,
  info: Bytes,
  length: number,
): Promise<Bytes> {
  const from = await subtle.importKey('raw', secret, 'HKDF', false, ['deriveBits']);
  const how = { name: 'HKDF', hash: 'SHA-256', salt, info };
  return new Uint8Array(await subtle.deriveBits(how, from, length * 8));
}
