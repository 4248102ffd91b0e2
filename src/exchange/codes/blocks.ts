/** Bytes cut into blocks of one size, the last filled up with zeros. */
export function blocksOf(bytes: Uint8Array, size: number): Uint8Array[] {
  const blocks: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; from += size) {
    const block = new Uint8Array(size);
    block.set(bytes.subarray(from, from + size));
    blocks.push(block);
  }
  return blocks;
}

/** Adds one row of bits to another: exclusive or. */
export function addInto(to: Uint8Array, from: Uint8Array): void {
  for (let at = 0; at < to.length; at += 1) to[at]! ^= from[at]!;
}

/**
 * Which of `count` blocks are added up in the code of this number: a block each at first, then every block by the
 * toss of a coin. Such sums fill any gap: whatever was lost, about two more than are missing will do (random linear
 * code; with blocks as few as here it needs fewer than an LT code, and its sums cost nothing that is felt).
 */
export function blocksIn(number: number, count: number, series: number): Uint8Array {
  const chosen = new Uint8Array(count);
  if (number < count) {
    chosen[number] = 1;
    return chosen;
  }
  let bits = Math.imul(number, 0x9e_37_79_b9) ^ series;
  let isAny = false;
  for (let at = 0; at < count; at += 1) {
    bits = next(bits);
    chosen[at] = (bits >>> 15) & 1;
    isAny ||= chosen[at] === 1;
  }
  if (!isAny) chosen[number % count] = 1;
  return chosen;
}

/** The next of a row of random-looking numbers (mulberry32, Ettinger), the same on every phone. */
function next(state: number): number {
  let bits = (state + 0x6d_2b_79_f5) | 0;
  bits = Math.imul(bits ^ (bits >>> 15), bits | 1);
  bits ^= bits + Math.imul(bits ^ (bits >>> 7), bits | 61);
  return bits ^ (bits >>> 14);
}
