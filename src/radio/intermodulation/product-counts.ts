export interface ProductCounts {
  readonly twoToneThird: number;
  readonly threeToneThird: number;
  readonly twoToneFifth: number;
}

/**
 * How many products n carriers make in the three families tested: 2A-B and 3A-2B n(n-1) each, A+B-C
 * n(n-1)(n-2)/2. `productCounts(8)` → { twoToneThird: 56, threeToneThird: 168, twoToneFifth: 56 }
 */
export const productCounts = (n: number): ProductCounts => ({
  twoToneThird: n * (n - 1),
  threeToneThird: (n * (n - 1) * (n - 2)) / 2,
  twoToneFifth: n * (n - 1),
});

/** All third-order products, n²(n-1)/2. `allThirdOrder(8)` → 224 */
export const allThirdOrder = (n: number): number => (n * n * (n - 1)) / 2;

/**
 * All fifth-order products near the band, from two to five carriers. There are soon so many that only 3A-2B
 * is tested. `allFifthOrder(4)` → 64
 */
export const allFifthOrder = (n: number): number =>
  n * (n - 1) +
  n * choose(n - 1, 2) +
  n * (n - 1) * (n - 2) +
  n * (n - 1) * choose(n - 2, 2) +
  n * choose(n - 1, 3) +
  choose(n, 3) * choose(n - 3, 2);

function choose(n: number, k: number): number {
  if (n < k) return 0;
  let ways = 1;
  for (let step = 1; step <= k; step += 1) ways = (ways * (n - k + step)) / step;
  return ways;
}
