import { crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../../src/facts/day-file/crc32.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('crc32', () => {
  test.each([
    // The check value of CRC-32/ISO-HDLC in the catalogues of CRC algorithms; from memory, confirmed by zlib below.
    ['123456789', 0xcb_f4_39_26],
    ['', 0],
    // From memory.
    ['The quick brown fox jumps over the lazy dog', 0x41_4f_a3_39],
  ])('of %j', (text, value) => {
    expect(crc32(bytesOf(text))).toBe(value);
  });

  test('agrees with zlib over random bytes, also in two pieces (seed 32)', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(300), (bytes, cut) => {
        expect(crc32(bytes)).toBe(zlibCrc32(bytes));
        expect(crc32(bytes.subarray(cut), crc32(bytes.subarray(0, cut)))).toBe(zlibCrc32(bytes));
      }),
      { seed: 32, numRuns: 500 },
    );
  });
});
