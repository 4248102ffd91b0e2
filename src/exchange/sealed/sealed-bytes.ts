import { fail, ok } from '../../shared/result.ts';
import { bytesOfHex, hexOf, joined } from './bytes.ts';
import { DAY_NAME_BYTES, FIRST_KEY } from './day-keys.ts';
import type { SealedResult } from './refusals.ts';
import type { Bytes } from './sealing-crypto.ts';
import { SIGNATURE_BYTES, WRITER_BYTES } from './signing.ts';

/** What stands before the sealed text, readable by anybody and bound to it as additional data. */
export interface SealedHead {
  readonly day: string;
  /** Which of the day's keys seals it. */
  readonly keyNumber: number;
  readonly writer: string;
  /** Of the batch: a writer's batches count from 1, without a gap. */
  readonly number: number;
  /** The hash of the same writer's batch before, in hexadecimal digits; zeros before the first. */
  readonly before: string;
}

/** A sealed batch taken apart, with nothing believed yet. */
export interface SealedParts extends SealedHead {
  readonly headBytes: Bytes;
  readonly nonce: Bytes;
  readonly text: Bytes;
  readonly signature: Bytes;
  /** All but the signature: what is signed, and what the next batch's `before` is the hash of. */
  readonly signedBytes: Bytes;
}

/** Sealed with the day's first key. */
const FIRST_VERSION = 1;
/** Says which key it is sealed with. */
const KEYED_VERSION = 2;
export const HASH_BYTES = 32;
export const NONCE_BYTES = 12;
const NUMBER_BYTES = 4;
const KEY_NUMBER_BYTES = 2;
const FIRST_HEAD_BYTES = 1 + DAY_NAME_BYTES + WRITER_BYTES + NUMBER_BYTES + HASH_BYTES + NUMBER_BYTES;
/** Of AES-GCM: its text is never shorter. */
export const TAG_BYTES = 16;
const AFTER_HEAD_BYTES = NONCE_BYTES + TAG_BYTES + SIGNATURE_BYTES;
/** Whatever is larger is not even looked at. */
export const MOST_SEALED_BYTES = 1_000_000;

export function headBytes({ day, keyNumber, writer, number, before }: SealedHead, textLength: number): Bytes {
  return joined(
    ...(keyNumber === FIRST_KEY
      ? [Uint8Array.of(FIRST_VERSION)]
      : [Uint8Array.of(KEYED_VERSION), bytesOfNumber(keyNumber, KEY_NUMBER_BYTES)]),
    bytesOfHex(day),
    bytesOfHex(writer),
    bytesOfNumber(number, NUMBER_BYTES),
    bytesOfHex(before),
    bytesOfNumber(textLength, NUMBER_BYTES),
  );
}

/** Fails with `sealed-too-large`, `sealed-newer`, `sealed-cut` or `sealed-garbage`. */
export function takeApart(bytes: Uint8Array): SealedResult<SealedParts> {
  if (bytes.length > MOST_SEALED_BYTES) return fail({ code: 'sealed-too-large' });
  const copy = new Uint8Array(bytes);
  const version = copy[0] ?? 0;
  if (version > KEYED_VERSION && version < 16) return fail({ code: 'sealed-newer' });
  if (version !== FIRST_VERSION && version !== KEYED_VERSION) return fail({ code: 'sealed-garbage' });
  const headLength = headLengthOf(version);
  if (copy.length < headLength + AFTER_HEAD_BYTES) return fail({ code: 'sealed-cut' });
  let at = 1;
  const next = (length: number): Bytes => {
    at += length;
    return copy.slice(at - length, at);
  };
  const keyNumber = version === KEYED_VERSION ? numberOf(next(KEY_NUMBER_BYTES)) : FIRST_KEY;
  const head = {
    keyNumber,
    day: hexOf(next(DAY_NAME_BYTES)),
    writer: hexOf(next(WRITER_BYTES)),
    number: numberOf(next(NUMBER_BYTES)),
    before: hexOf(next(HASH_BYTES)),
  };
  const textLength = numberOf(next(NUMBER_BYTES));
  const whole = headLength + NONCE_BYTES + textLength + SIGNATURE_BYTES;
  if (copy.length < whole) return fail({ code: 'sealed-cut' });
  if (copy.length > whole || textLength < TAG_BYTES || head.number === 0 || !isOwnVersion(version, keyNumber))
    return fail({ code: 'sealed-garbage' });
  return ok({
    ...head,
    headBytes: copy.slice(0, headLength),
    nonce: next(NONCE_BYTES),
    text: next(textLength),
    signature: next(SIGNATURE_BYTES),
    signedBytes: copy.slice(0, -SIGNATURE_BYTES),
  });
}

/** How long the batch is that these bytes begin with; null for what begins as none. */
export function lengthOfSealed(bytes: Uint8Array): number | null {
  const [version] = bytes;
  if (version !== FIRST_VERSION && version !== KEYED_VERSION) return null;
  const head = headLengthOf(version);
  if (bytes.length < head) return null;
  return head + NONCE_BYTES + numberOf(bytes.slice(head - NUMBER_BYTES, head)) + SIGNATURE_BYTES;
}

const headLengthOf = (version: number): number =>
  FIRST_HEAD_BYTES + (version === KEYED_VERSION ? KEY_NUMBER_BYTES : 0);

/** Each batch has one form: the first key has a version of its own. */
const isOwnVersion = (version: number, keyNumber: number): boolean =>
  version === FIRST_VERSION || keyNumber > FIRST_KEY;

const bytesOfNumber = (value: number, length: number): Bytes =>
  Uint8Array.from({ length }, (_, at) => (value >>> (8 * (length - 1 - at))) & 0xff);

const numberOf = (bytes: Uint8Array): number => bytes.reduce((sum, byte) => sum * 256 + byte, 0);
