export const SUM_BYTES = 6;
export const SUM_END = 256 ** SUM_BYTES;

const PRIME = 0x01_00_01_93;

/**
 * 48 bits of a text, from two multiplicative hashes (FNV-1a; Fowler, Noll, Vo) with different beginnings. A CRC would
 * not do: it is linear, and in sums over neighbouring entries differences would cancel.
 */
export function hashOf(text: string): number {
  let [one, other] = [0x81_1c_9d_c5, 0x9d_c5_81_1c];
  for (let at = 0; at < text.length; at += 1) {
    const unit = text.charCodeAt(at);
    one = Math.imul(one ^ unit, PRIME);
    other = Math.imul(other ^ (unit + at), PRIME);
  }
  return (mixed(one) & 0xff_ff) * 2 ** 32 + mixed(one ^ other);
}

/** Spreads the bits of a hash (the finalizer of MurmurHash3; Appleby). */
function mixed(hash: number): number {
  let bits = hash;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85_eb_ca_6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2_b2_ae_35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
