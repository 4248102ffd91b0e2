import { isReadable } from '../../facts/fact.ts';
import type { DayId, Envelope } from '../../facts/kinds/envelope.ts';
import { canonicalText } from '../../facts/stored.ts';
import { fail, ok } from '../../shared/result.ts';
import type { Packing } from '../parcel.ts';
import { hexOf, joined } from './bytes.ts';
import { type DayKeys, sealingOf } from './day-keys.ts';
import type { SealedResult } from './refusals.ts';
import {
  HASH_BYTES,
  headBytes,
  NONCE_BYTES,
  type SealedParts,
  TAG_BYTES,
  takeApart,
} from './sealed-bytes.ts';
import type { Bytes, SealingCrypto } from './sealing-crypto.ts';
import { isSignedBy, type PublicKey, sha256, signed, type WriterKey } from './signing.ts';

/** What sealing needs of the platform. */
export interface SealingParts {
  readonly crypto: SealingCrypto;
  readonly packing: Packing;
}

/** The last batch of a writer: what its next one follows. */
export interface ChainEnd {
  readonly number: number;
  /** In hexadecimal digits. */
  readonly hash: string;
}

/** Facts of one writer as they travel. */
export interface SealedBatch extends ChainEnd {
  readonly writer: string;
  readonly bytes: Bytes;
}

export const NO_BATCH: ChainEnd = { number: 0, hash: '0'.repeat(HASH_BYTES * 2) };
/** Nothing opens to more text. */
const MOST_TEXT = 4_000_000;

/**
 * Seals facts as the writer's next batch, with the day's key of this number, which this phone must have. All phones
 * seal with one key, so the nonce is random: after 2^32 batches under one key two might be alike (NIST SP 800-38D,
 * 8.3), and a day has thousands.
 */
export async function sealBatch(
  { crypto, packing }: SealingParts,
  keys: DayKeys,
  key: WriterKey,
  last: ChainEnd,
  facts: readonly Envelope[],
  keyNumber: number,
): Promise<SealedBatch> {
  const packed = await packing.pack(facts.map(canonicalText).join('\n'));
  const number = last.number + 1;
  const head = headBytes(
    { day: keys.name, keyNumber, writer: key.writer, number, before: last.hash },
    packed.length + TAG_BYTES,
  );
  const nonce = crypto.random(NONCE_BYTES);
  const how = { name: 'AES-GCM', iv: nonce, additionalData: head };
  const text = await crypto.subtle.encrypt(how, sealingOf(keys, keyNumber)!, new Uint8Array(packed));
  const signedBytes = joined(head, nonce, new Uint8Array(text));
  const [signature, hash] = await Promise.all([
    signed(crypto, key, signedBytes),
    hashOfBatch(crypto, signedBytes),
  ]);
  return { writer: key.writer, number, hash, bytes: joined(signedBytes, signature) };
}

/** Takes bytes apart, if they claim to be of this day. Nothing is proved yet. */
export function readSealed(keys: DayKeys, bytes: Uint8Array): SealedResult<SealedParts> {
  const parts = takeApart(bytes);
  return parts.ok && parts.value.day !== keys.name ? fail({ code: 'sealed-other-day' }) : parts;
}

/**
 * The hash of a batch. Without its signature: of one ECDSA signature anybody can make a second one (the negative of
 * its second half), and it would look like another batch.
 */
export const hashOfBatch = async (crypto: SealingCrypto, signedBytes: Bytes): Promise<string> =>
  hexOf(await sha256(crypto, signedBytes));

/** Fails with `sealed-forged`, or `sealed-unchecked` where the platform does not know this kind of key. */
export async function checkSigned(
  crypto: SealingCrypto,
  key: PublicKey,
  { signature, signedBytes }: SealedParts,
): Promise<SealedResult<true>> {
  const isSigned = await isSignedBy(crypto, key, signature, signedBytes);
  if (isSigned === null) return fail({ code: 'sealed-unchecked' });
  return isSigned ? ok(true) : fail({ code: 'sealed-forged' });
}

/**
 * The facts in a batch whose signature was checked; `day` is the one that they must belong to. Fails with
 * `sealed-key-missing`, `sealed-wrong-key` or `sealed-garbage`.
 */
export async function openSealed(
  { crypto, packing }: SealingParts,
  keys: DayKeys,
  day: DayId,
  { headBytes, keyNumber, nonce, text }: SealedParts,
): Promise<SealedResult<readonly Envelope[]>> {
  const sealing = sealingOf(keys, keyNumber);
  if (!sealing) return fail({ code: 'sealed-key-missing' });
  const packed = await crypto.subtle
    .decrypt({ name: 'AES-GCM', iv: nonce, additionalData: headBytes }, sealing, text)
    .catch(() => null);
  if (!packed) return fail({ code: 'sealed-wrong-key' });
  const lines = await packing.unpack(new Uint8Array(packed), MOST_TEXT);
  const facts = lines === null ? null : factsIn(lines);
  if (!facts?.every((fact) => fact.day === day)) return fail({ code: 'sealed-garbage' });
  return ok(facts);
}

/** Null if any line is no fact. */
function factsIn(lines: string): Envelope[] | null {
  try {
    const facts = lines.split('\n').map((line) => JSON.parse(line) as unknown);
    return facts.every(isReadable) ? facts : null;
  } catch {
    return null;
  }
}
