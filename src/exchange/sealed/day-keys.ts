import { hexOf, utf8 } from './bytes.ts';
import type { Bytes, PlatformKey, SealingCrypto, Subtle } from './sealing-crypto.ts';

/** What a phone needs to read a day. Whoever has `secret` has the rest too; only a phone that lets others in keeps it. */
export interface DayKeys {
  /**
   * What servers and files call the day, as 32 hexadecimal digits: it comes from the secret, so nobody can tell which
   * production it is.
   */
  readonly name: string;
  /** Seals and opens; cannot be taken out of the platform. */
  readonly sealing: PlatformKey;
}

export const SECRET_BYTES = 32;
export const DAY_NAME_BYTES = 16;
const KEY_BYTES = 32;

/** The labels keep what is made from one secret apart; another form of batch takes others. */
const SEALING_LABEL = 'rollbook 1 sealing key';
const NAME_LABEL = 'rollbook 1 day name';

/** The secret of a new day: 256 random bits. */
export const newDaySecret = (crypto: SealingCrypto): Bytes => crypto.random(SECRET_BYTES);

export async function dayKeysOf({ subtle }: SealingCrypto, secret: Bytes): Promise<DayKeys> {
  const [key, name] = await Promise.all([
    hkdf(subtle, secret, new Uint8Array(), utf8(SEALING_LABEL), KEY_BYTES),
    hkdf(subtle, secret, new Uint8Array(), utf8(NAME_LABEL), DAY_NAME_BYTES),
  ]);
  const sealing = await subtle.importKey('raw', key, 'AES-GCM', false, ['encrypt', 'decrypt']);
  return { name: hexOf(name), sealing };
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
