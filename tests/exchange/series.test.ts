import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromBase45, toBase45 } from '../../src/exchange/codes/base45.ts';
import { Collector } from '../../src/exchange/codes/collector.ts';
import { BLOCK_BYTES, readPiece, type Series, seriesOf } from '../../src/exchange/codes/series.ts';

const utf8 = new TextEncoder();

describe('bytes as text', () => {
  // RFC 9285, sections 4.3 and 4.4.
  test.each([
    ['AB', 'BB8'],
    ['Hello!!', '%69 VD92EX0'],
    ['base-45', 'UJCLQE7W581'],
    ['ietf!', 'QED8WEX0'],
  ])('%s is %s, as RFC 9285 says', (plain, coded) => {
    expect(toBase45(utf8.encode(plain))).toBe(coded);
    expect(fromBase45(coded)).toEqual(utf8.encode(plain));
  });

  test('comes back as it went, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        expect(fromBase45(toBase45(bytes))).toEqual(bytes);
      }),
    );
  });

  // RFC 9285, section 6: `:::` and `GGW` stand for more than two bytes.
  test.each(['GGW', ':::', 'A', 'ABCD', 'ab8', 'BB8é', '::'])('%s is no such text', (text) => {
    expect(fromBase45(text)).toBeNull();
  });
});

/** Random bytes that are the same every time. */
const bytesOf = (length: number): Uint8Array =>
  Uint8Array.from({ length }, (_, at) => (Math.imul(at + 1, 2_654_435_761) >>> 13) & 0xff);

/** Reads codes by number until it has everything: the bytes, and how many were read. */
function collect(codes: Iterable<string>) {
  const collector = new Collector();
  let read = 0;
  for (const code of codes) {
    read += 1;
    collector.take(readPiece(code)!);
    const bytes = collector.bytes();
    if (bytes) return { bytes, read };
  }
  return { bytes: null, read };
}

/** The codes from some number on, every third lost. */
function* lossy(series: Series, from: number): Generator<string> {
  for (let number = from * 7; ; number += 1) if (number % 3 !== from % 3) yield series.code(number);
}

describe('a series of codes', () => {
  test('is read from its first codes when none is lost', () => {
    const bytes = bytesOf(10 * BLOCK_BYTES + 1);
    const series = seriesOf(bytes);
    expect(series.count).toBe(11);
    const codes = Array.from({ length: series.count }, (_, number) => series.code(number));
    expect(collect(codes)).toEqual({ bytes, read: 11 });
  });

  test('is read whatever is lost, doubled and out of order', () => {
    const some = fc.record({
      length: fc.integer({ min: 1, max: 3000 }),
      blockSize: fc.integer({ min: 20, max: 200 }),
      numbers: fc.uniqueArray(fc.integer({ min: 0, max: 5000 }), { minLength: 200, maxLength: 240 }),
    });
    fc.assert(
      fc.property(some, ({ length, blockSize, numbers }) => {
        const bytes = bytesOf(length);
        const series = seriesOf(bytes, blockSize);
        const doubled = numbers.flatMap((number) => [series.code(number), series.code(number)]);
        expect(collect(doubled).bytes).toEqual(bytes);
      }),
      { numRuns: 60 },
    );
  });

  // Random rows over bits: with two more than are missing, three in four are enough; with ten, all but one in a
  // thousand.
  test('needs few codes more than it lost', () => {
    const bytes = bytesOf(40 * BLOCK_BYTES);
    const series = seriesOf(bytes);
    const extras = Array.from({ length: 20 }, (_, from) => {
      const { bytes: found, read } = collect(lossy(series, from));
      expect(found).toEqual(bytes);
      return read - series.count;
    });
    expect(Math.max(...extras)).toBeLessThanOrEqual(10);
    expect(extras.reduce((sum, extra) => sum + extra, 0) / extras.length).toBeLessThan(3);
  });

  test('says how much of it was read', () => {
    const series = seriesOf(bytesOf(4 * BLOCK_BYTES));
    const collector = new Collector();
    expect(collector.take(readPiece(series.code(2))!)).toBe(true);
    expect(collector.take(readPiece(series.code(2))!)).toBe(false);
    expect(collector.progress).toEqual({ read: 1, count: 4 });
  });

  test('another series starts anew', () => {
    const [first, second] = [bytesOf(3 * BLOCK_BYTES), bytesOf(2 * BLOCK_BYTES)];
    const codes = [seriesOf(first).code(0), seriesOf(second).code(0), seriesOf(second).code(1)];
    expect(collect(codes)).toEqual({ bytes: second, read: 3 });
  });

  test('a code with any character changed is none', () => {
    const code = seriesOf(bytesOf(60), 30).code(1);
    for (let at = 0; at < code.length; at += 1) {
      const other = code[at] === '0' ? '1' : '0';
      expect(readPiece(code.slice(0, at) + other + code.slice(at + 1))).toBeNull();
    }
    expect(readPiece('HTTPS://EXAMPLE.ORG')).toBeNull();
  });
});
