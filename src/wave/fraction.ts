/** An exact number `num / den`, in lowest terms, `den` above zero. */
export interface Fraction {
  readonly num: number;
  readonly den: number;
}

const WRITTEN = /^(\d{1,9})(?:[.](\d{1,6}))?(?:\s*\/\s*(\d{1,9}))?$/;

/** Reads '24000/1001', '25' or '23.976' as it stands; undefined for anything else, and for a divisor of zero. */
export function readFraction(text: string): Fraction | undefined {
  const [, whole, decimals = '', divisor] = WRITTEN.exec(text.trim()) ?? [];
  if (whole === undefined || (divisor !== undefined && decimals !== '')) return undefined;
  const den = divisor === undefined ? 10 ** decimals.length : Number(divisor);
  return den === 0 ? undefined : reduced(Number(whole + decimals), den);
}

function reduced(num: number, den: number): Fraction {
  let [a, b] = [num, den];
  while (b !== 0) [a, b] = [b, a % b];
  return { num: num / a, den: den / a };
}
