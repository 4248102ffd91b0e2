import { bytesOfHex, hexOf, joined, utf8 } from './bytes.ts';
import { hkdf } from './day-keys.ts';
import type { Bytes, PlatformKey, PlatformKeyPair, SealingCrypto, Subtle } from './sealing-crypto.ts';

/**
 * The public half of the key by which something is given to one phone alone, as hexadecimal digits: 32 bytes of X25519
 * (RFC 7748), or 65 of an uncompressed point of P-256.
 */
export type AgreementPublic = string;

/** The private half cannot be taken out of the platform. */
export interface AgreementKey {
  readonly publicKey: AgreementPublic;
  readonly privateKey: PlatformKey;
}

export const AGREEMENT_PUBLIC = /^([0-9a-f]{64}|04[0-9a-f]{128})$/;

const X25519_DIGITS = 64;
const P256_DIGITS = 130;
const P256 = { name: 'ECDH', namedCurve: 'P-256' };
const SHARED_BITS = 256;
const KEY_BYTES = 32;
const NONCE_BYTES = 12;

/** X25519 where the platform has it, otherwise P-256. */
export async function newAgreementKey({ subtle }: SealingCrypto): Promise<AgreementKey> {
  const { publicKey, privateKey } = await newPair(subtle, X25519_DIGITS).catch(() =>
    newPair(subtle, P256_DIGITS),
  );
  return { publicKey: await exported(subtle, publicKey), privateKey };
}

/**
 * Seals bytes to one phone, in hexadecimal digits: the public half of a key pair made for this alone, then what is
 * sealed. `about` binds the use, so that it opens nowhere else. Null where the platform does not know the phone's kind
 * of key.
 */
export async function sealedTo(
  { subtle }: SealingCrypto,
  to: AgreementPublic,
  about: string,
  bytes: Bytes,
): Promise<string | null> {
  try {
    const { publicKey, privateKey } = await newPair(subtle, to.length);
    const once = await exported(subtle, publicKey);
    const { key, nonce } = await agreed(subtle, { privateKey, with: to, once, to, about });
    const sealed = await subtle.encrypt({ name: 'AES-GCM', iv: nonce }, key, bytes);
    return once + hexOf(new Uint8Array(sealed));
  } catch {
    return null;
  }
}

/** Null for what was not sealed to this key, or not about this. */
export async function openedBy(
  { subtle }: SealingCrypto,
  { publicKey: to, privateKey }: AgreementKey,
  about: string,
  box: string,
): Promise<Bytes | null> {
  const once = box.slice(0, to.length);
  try {
    const { key, nonce } = await agreed(subtle, { privateKey, with: once, once, to, about });
    const sealed = bytesOfHex(box.slice(to.length));
    return new Uint8Array(await subtle.decrypt({ name: 'AES-GCM', iv: nonce }, key, sealed));
  } catch {
    return null;
  }
}

interface Agreeing {
  readonly privateKey: PlatformKey;
  readonly with: AgreementPublic;
  readonly once: AgreementPublic;
  readonly to: AgreementPublic;
  readonly about: string;
}

/**
 * Key and nonce of one box (as RFC 9180 makes them, of both public keys and the use). The nonce needs no randomness:
 * one of the two key pairs is new for each box, so the key never seals anything else.
 */
async function agreed(subtle: Subtle, { privateKey, with: other, once, to, about }: Agreeing) {
  const how = { ...algorithmOf(other.length), public: await imported(subtle, other) };
  const shared = new Uint8Array(await subtle.deriveBits(how, privateKey, SHARED_BITS));
  const salt = joined(bytesOfHex(once), bytesOfHex(to));
  const both = await hkdf(subtle, shared, salt, utf8(`rollbook 1 given ${about}`), KEY_BYTES + NONCE_BYTES);
  const key = both.slice(0, KEY_BYTES);
  return {
    key: await subtle.importKey('raw', key, 'AES-GCM', false, ['encrypt', 'decrypt']),
    nonce: both.slice(KEY_BYTES),
  };
}

const algorithmOf = (digits: number) => (digits === X25519_DIGITS ? { name: 'X25519' } : P256);

const newPair = async (subtle: Subtle, digits: number): Promise<PlatformKeyPair> =>
  (await subtle.generateKey(algorithmOf(digits), false, ['deriveBits'])) as PlatformKeyPair;

const exported = async (subtle: Subtle, key: PlatformKey): Promise<string> =>
  hexOf(new Uint8Array(await subtle.exportKey('raw', key)));

const imported = (subtle: Subtle, key: AgreementPublic): Promise<PlatformKey> =>
  subtle.importKey('raw', bytesOfHex(key), algorithmOf(key.length), true, []);
