import { bytesOfHex, hexOf } from './bytes.ts';
import type { Bytes, PlatformKey, PlatformKeyPair, SealingCrypto, Subtle } from './sealing-crypto.ts';

/** A public key as hexadecimal digits: 32 bytes of Ed25519 (RFC 8032), or 65 of an uncompressed point of P-256. */
export type PublicKey = string;

/** The key that a phone signs with; the private half cannot be taken out of the platform. */
export interface WriterKey {
  readonly publicKey: PublicKey;
  readonly privateKey: PlatformKey;
  /** What its batches go by: 32 hexadecimal digits. */
  readonly writer: string;
}

export const PUBLIC_KEY = /^([0-9a-f]{64}|04[0-9a-f]{128})$/;
export const WRITER_NAME = /^[0-9a-f]{32}$/;
export const WRITER_BYTES = 16;
/** Of both kinds. */
export const SIGNATURE_BYTES = 64;

const ED25519_DIGITS = 64;
const P256 = { name: 'ECDSA', namedCurve: 'P-256' };
const signingWith = (key: PublicKey) =>
  key.length === ED25519_DIGITS ? { name: 'Ed25519' } : { name: 'ECDSA', hash: 'SHA-256' };

/** Ed25519 where the platform has it, otherwise P-256. */
export async function newWriterKey(crypto: SealingCrypto): Promise<WriterKey> {
  const { subtle } = crypto;
  const make = async (algorithm: typeof P256 | { name: string }): Promise<PlatformKeyPair> =>
    (await subtle.generateKey(algorithm, false, ['sign', 'verify'])) as PlatformKeyPair;
  const { publicKey, privateKey } = await make({ name: 'Ed25519' }).catch(() => make(P256));
  const text = hexOf(new Uint8Array(await subtle.exportKey('raw', publicKey)));
  return { publicKey: text, privateKey, writer: await writerOfKey(crypto, text) };
}

/** The beginning of the key's hash. */
export const writerOfKey = async (crypto: SealingCrypto, key: PublicKey): Promise<string> =>
  hexOf((await sha256(crypto, bytesOfHex(key))).subarray(0, WRITER_BYTES));

export const sha256 = async ({ subtle }: SealingCrypto, bytes: Bytes): Promise<Bytes> =>
  new Uint8Array(await subtle.digest('SHA-256', bytes));

export const signed = async (
  { subtle }: SealingCrypto,
  { publicKey, privateKey }: WriterKey,
  bytes: Bytes,
): Promise<Bytes> => new Uint8Array(await subtle.sign(signingWith(publicKey), privateKey, bytes));

/** Null where the platform cannot check this kind of signature. */
export async function isSignedBy(
  { subtle }: SealingCrypto,
  key: PublicKey,
  signature: Bytes,
  bytes: Bytes,
): Promise<boolean | null> {
  const imported = await importedKey(subtle, key);
  if (imported !== 'unknown-kind')
    return imported !== null && subtle.verify(signingWith(key), imported, signature, bytes);
  return null;
}

/** Null for what is no key. */
async function importedKey(subtle: Subtle, key: PublicKey): Promise<PlatformKey | 'unknown-kind' | null> {
  const algorithm = key.length === ED25519_DIGITS ? { name: 'Ed25519' } : P256;
  try {
    return await subtle.importKey('raw', bytesOfHex(key), algorithm, true, ['verify']);
  } catch (error) {
    return error instanceof Error && error.name === 'NotSupportedError' ? 'unknown-kind' : null;
  }
}
