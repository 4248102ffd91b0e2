import { fail, ok } from '../../shared/result.ts';
import { bytesOfHex, hexOf, joined } from './bytes.ts';
import { DAY_NAME_BYTES } from './day-keys.ts';
import type { SealedResult } from './refusals.ts';
import type { Bytes } from './sealing-crypto.ts';
import { SIGNATURE_BYTES, WRITER_BYTES } from './signing.ts';

/** What stands before the sealed text, readable by anybody and bound to it as additional data. */
export interface SealedHead {
  readonly day: string;
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

const VERSION = 1;
export const HASH_BYTES = 32;
export const NONCE_BYTES = 12;
const NUMBER_BYTES = 4;
const HEAD_BYTES = 1 + DAY_NAME_BYTES + WRITER_BYTES + NUMBER_BYTES + HASH_BYTES + NUMBER_BYTES;
/** Of AES-GCM: its text is never shorter. */
export const TAG_BYTES = 16;
const LEAST_BYTES = HEAD_BYTES + NONCE_BYTES + TAG_BYTES + SIGNATURE_BYTES;
/** Whatever is larger is not even looked at. */
export const MOST_SEALED_BYTES = 1_000_000;

export function headBytes({ day, writer, number, before }: SealedHead, textLength: number): Bytes {
  return joined(
    Uint8Array.of(VERSION),
    bytesOfHex(day),
    bytesOfHex(writer),
    fourBytes(number),
    bytesOfHex(before),
    fourBytes(textLength),
  );
}

/** Fails with `sealed-too-large`, `sealed-newer`, `sealed-cut` or `sealed-garbage`. */
export function takeApart(bytes: Uint8Array): SealedResult<SealedParts> {
  if (bytes.length > MOST_SEALED_BYTES) return fail({ code: 'sealed-too-large' });
  const copy = new Uint8Array(bytes);
  const version = copy[0] ?? 0;
  if (version > VERSION && version < 16) return fail({ code: 'sealed-newer' });
  if (version !== VERSION) return fail({ code: 'sealed-garbage' });
  if (copy.length < LEAST_BYTES) return fail({ code: 'sealed-cut' });
  let at = 1;
  const next = (length: number): Bytes => {
    at += length;
    return copy.slice(at - length, at);
  };
  const head = {
    day: hexOf(next(DAY_NAME_BYTES)),
    writer: hexOf(next(WRITER_BYTES)),
    number: numberOf(next(NUMBER_BYTES)),
    before: hexOf(next(HASH_BYTES)),
  };
  const textLength = numberOf(next(NUMBER_BYTES));
  const whole = HEAD_BYTES + NONCE_BYTES + textLength + SIGNATURE_BYTES;
  if (copy.length < whole) return fail({ code: 'sealed-cut' });
  if (copy.length > whole || textLength < TAG_BYTES || head.number === 0)
    return fail({ code: 'sealed-garbage' });
  return ok({
    ...head,
    headBytes: copy.slice(0, HEAD_BYTES),
    nonce: next(NONCE_BYTES),
    text: next(textLength),
    signature: next(SIGNATURE_BYTES),
    signedBytes: copy.slice(0, -SIGNATURE_BYTES),
  });
}

const fourBytes = (value: number): Bytes =>
  Uint8Array.of(value >>> 24, (value >>> 16) & 0xff, (value >>> 8) & 0xff, value & 0xff);

const numberOf = (bytes: Uint8Array): number => bytes.reduce((sum, byte) => sum * 256 + byte, 0);
