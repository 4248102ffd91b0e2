/** A key as the platform holds it (CryptoKey of W3C Web Cryptography): code never sees what is in it. */
export interface PlatformKey {
  readonly type: string;
  readonly extractable: boolean;
}

export interface PlatformKeyPair {
  readonly publicKey: PlatformKey;
  readonly privateKey: PlatformKey;
}

export type Bytes = Uint8Array<ArrayBuffer>;
type Algorithm = string | (Readonly<Record<string, unknown>> & { readonly name: string });

/** What is used of the platform's SubtleCrypto, which browsers and Node share. */
export interface Subtle {
  digest(algorithm: 'SHA-256', bytes: Bytes): Promise<ArrayBuffer>;
  importKey(
    format: 'raw',
    bytes: Bytes,
    algorithm: Algorithm,
    extractable: boolean,
    usages: readonly string[],
  ): Promise<PlatformKey>;
  exportKey(format: 'raw', key: PlatformKey): Promise<ArrayBuffer>;
  generateKey(
    algorithm: Algorithm,
    extractable: boolean,
    usages: readonly string[],
  ): Promise<PlatformKey | PlatformKeyPair>;
  deriveBits(algorithm: Algorithm, key: PlatformKey, bits: number): Promise<ArrayBuffer>;
  encrypt(algorithm: Algorithm, key: PlatformKey, bytes: Bytes): Promise<ArrayBuffer>;
  decrypt(algorithm: Algorithm, key: PlatformKey, bytes: Bytes): Promise<ArrayBuffer>;
  sign(algorithm: Algorithm, key: PlatformKey, bytes: Bytes): Promise<ArrayBuffer>;
  verify(algorithm: Algorithm, key: PlatformKey, signature: Bytes, bytes: Bytes): Promise<boolean>;
}

/** The platform's cryptography, with its randomness. */
export interface SealingCrypto {
  readonly subtle: Subtle;
  random(bytes: number): Bytes;
}

/** The platform's own: `crypto` of a browser, or of Node. */
export const platformCrypto = (crypto: {
  readonly subtle: Subtle;
  getRandomValues(bytes: Bytes): unknown;
}): SealingCrypto => ({
  subtle: crypto.subtle,
  random(count) {
    const bytes = new Uint8Array(count);
    crypto.getRandomValues(bytes);
    return bytes;
  },
});
