/**
 * Rulers of `count` marks with all differences distinct, none under `leastGap`, narrowest first: windows of
 * the sets of Bose and Chowla (Comment. Math. Helv. 37, 1962/63, 141-147) for small primes p. There the
 * powers i of a generator θ of GF(p²) with θ^i = θ + a give p marks modulo p² - 1 with distinct differences,
 * which multiplying by a unit and rotating preserve. `rulerSets(3, 1, 1)[0]` → [0, 1, 3]
 */
export function rulerSets(count: number, leastGap: number, most: number): readonly (readonly number[])[] {
  const primes = PRIMES.filter((p) => p >= count).slice(0, 2);
  const rulers = primes.flatMap((p) => {
    const modulus = p * p - 1;
    const marks = boseChowla(p);
    return units(modulus).flatMap((unit) =>
      windows(
        marks.map((mark) => (mark * unit) % modulus).sort((a, b) => a - b),
        count,
        modulus,
      ),
    );
  });
  const wide = rulers.filter((ruler) =>
    ruler.every((mark, at) => at === 0 || mark - ruler[at - 1]! >= leastGap),
  );
  return wide.sort((a, b) => a.at(-1)! - b.at(-1)! || compare(a, b)).slice(0, most);
}

const PRIMES = [3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47];

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((mark, spot) => mark !== b[spot]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}

const units = (modulus: number): number[] =>
  Array.from({ length: modulus - 1 }, (_, step) => step + 1).filter(
    (unit) => commonDivisor(unit, modulus) === 1,
  );

export const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Every run of `count` neighbouring marks around the circle, shifted to begin at 0. */
const windows = (marks: readonly number[], count: number, modulus: number): number[][] =>
  marks.map((start, at) =>
    Array.from({ length: count }, (_, step) => {
      const turned = at + step;
      return marks[turned % marks.length]! + (turned >= marks.length ? modulus : 0) - start;
    }),
  );

/** The p marks of one prime. θ² = mθ + n is tried until θ has all p² - 1 powers. */
function boseChowla(p: number): readonly number[] {
  for (let m = 0; m < p; m += 1)
    for (let n = 1; n < p; n += 1) {
      const marks = marksOf(p, m, n);
      if (marks) return marks;
    }
  throw new Error(`No generator for ${p}`);
}

function marksOf(p: number, m: number, n: number): readonly number[] | undefined {
  const marks: number[] = [];
  let slope = 1;
  let rest = 0;
  for (let power = 1; power < p * p - 1; power += 1) {
    if (slope === 0 && rest === 1) return undefined;
    if (slope === 1) marks.push(power);
    [slope, rest] = [(slope * m + rest) % p, (slope * n) % p];
  }
  return slope === 0 && rest === 1 && marks.length === p ? marks : undefined;
}
