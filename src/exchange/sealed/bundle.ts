import { bytesOfHex, hexOf, joined } from './bytes.ts';
import { DAY_NAME_BYTES } from './day-keys.ts';
import { lengthOfSealed } from './sealed-bytes.ts';
import type { Bytes } from './sealing-crypto.ts';

/** Sealed batches on their way by codes or in a file: each is checked at the door by itself. */
export interface Bundle {
  /** The public name of the day. */
  readonly day: string;
  readonly batches: readonly Uint8Array[];
}

/** No text that was made small by the platform begins so (RFC 1951, 3.2.3: a reserved kind of block). */
const FORM = 7;

export const bundleBytes = ({ day, batches }: Bundle): Bytes =>
  joined(Uint8Array.of(FORM), bytesOfHex(day), ...batches);

/** Null for what is no bundle; one that was cut short gives the batches that are whole. */
export function readBundle(bytes: Uint8Array): Bundle | null {
  const head = 1 + DAY_NAME_BYTES;
  if (bytes[0] !== FORM || bytes.length < head) return null;
  const batches: Uint8Array[] = [];
  let at = head;
  while (at < bytes.length) {
    const length = lengthOfSealed(bytes.subarray(at));
    if (length === null || at + length > bytes.length) break;
    batches.push(bytes.slice(at, at + length));
    at += length;
  }
  return { day: hexOf(bytes.subarray(1, head)), batches };
}
