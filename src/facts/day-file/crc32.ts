/** The reflected polynomial of the CRC-32 in ISO/IEC 3309, ITU-T V.42 and RFC 1952 section 8. */
const POLYNOMIAL = 0xed_b8_83_20;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  return rest;
});

/**
 * CRC-32 of bytes as in RFC 1952 section 8, 0 to 2^32 - 1. Pass the previous value to continue with more
 * bytes. The nine digits '123456789' give 0xcbf43926.
 */
export function crc32(bytes: Uint8Array, soFar = 0): number {
  let crc = ~soFar;
  for (const byte of bytes) crc = TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return ~crc >>> 0;
}
