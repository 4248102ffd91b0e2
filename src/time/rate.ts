export type RateId =
  | '23.976'
  | '24'
  | '25'
  | '29.97'
  | '29.97DF'
  | '30'
  | '30DF'
  | '47.952'
  | '48'
  | '50'
  | '59.94'
  | '59.94DF'
  | '60';

/** Exactly `num / den` frames a second; labels 0 to `base - 1`, of which `dropped` are skipped a minute. */
export interface Rate {
  readonly id: RateId;
  readonly num: number;
  readonly den: number;
  readonly base: number;
  readonly dropped: 0 | 2 | 4;
}

const whole = (id: RateId, base: number, dropped: 0 | 2 = 0): Rate => ({
  id,
  num: base,
  den: 1,
  base,
  dropped,
});

const slowed = (id: RateId, base: number, dropped: 0 | 2 | 4 = 0): Rate => ({
  id,
  num: base * 1000,
  den: 1001,
  base,
  dropped,
});

/** All rates, slowest first. Nominal: scope of SMPTE ST 12-1:2014; 30 DF is common practice, no source. */
export const RATES: readonly Rate[] = [
  slowed('23.976', 24),
  whole('24', 24),
  whole('25', 25),
  slowed('29.97', 30),
  slowed('29.97DF', 30, 2),
  whole('30', 30),
  whole('30DF', 30, 2),
  slowed('47.952', 48),
  whole('48', 48),
  whole('50', 50),
  slowed('59.94', 60),
  slowed('59.94DF', 60, 4),
  whole('60', 60),
];

const BY_ID: ReadonlyMap<string, Rate> = new Map(RATES.map((rate) => [rate.id, rate]));

/** The exact numbers behind a rate; throws on an unknown id. `rateOf('29.97DF').num` is 30000. */
export function rateOf(id: RateId): Rate {
  const rate = BY_ID.get(id);
  if (!rate) throw new RangeError(`No such frame rate: ${id}`);
  return rate;
}

const SECONDS_PER_DAY = 86_400;
/** Minutes of a day that skip labels: all but every tenth. */
const DROPPING_MINUTES = 1_440 - 144;

/** Labels, and so frames, from 00:00:00:00 to the next 00:00:00:00. `framesPerDay('29.97DF')` is 2589408. */
export function framesPerDay(id: RateId): number {
  const { base, dropped } = rateOf(id);
  return base * SECONDS_PER_DAY - dropped * DROPPING_MINUTES;
}

const WRITTEN_RATE = /^0*(\d{1,8})(?:[.,](\d{1,12}))?(?:\/0*(\d{1,8}))?(?:fps)?[-_]?(NDF?|DF?)?(?:fps)?$/i;

/** A written rate as a fraction; '2997' and '23976' have lost their point; four decimals are enough. */
function fractionOf(whole: string, decimals = '', divisor = ''): readonly [number, number] | undefined {
  if (divisor) return decimals || Number(divisor) === 0 ? undefined : [Number(whole), Number(divisor)];
  if (whole.length > 5) return undefined;
  if (!decimals && whole.length >= 4) return [Number(whole), 10 ** (whole.length - 2)];
  const places = decimals.slice(0, 4);
  return [Number(whole + places), 10 ** places.length];
}

/**
 * The rate a file or a person most likely meant: within 0.01 frames a second (no two are closer than 0.024),
 * or undefined. DF or ND in the text overrides `dropFrame`; drop-frame is ignored at a rate that has none.
 * `nearestRate('23.98')` is '23.976'; `nearestRate('30000/1001', true)` is '29.97DF'; `nearestRate('2997ND')`
 * is '29.97'.
 */
export function nearestRate(text: string, dropFrame = false): RateId | undefined {
  if (text.length > 40) return undefined;
  const match = WRITTEN_RATE.exec(text.replaceAll(/\s/g, ''));
  const fraction = match && fractionOf(match[1]!, match[2], match[3]);
  if (!match || !fraction) return undefined;
  const [n, d] = fraction;
  // |n/d − num/den| ≤ 1/100, multiplied out to stay in whole numbers below 2^53.
  const near = RATES.filter(({ num, den }) => 100 * Math.abs(n * den - num * d) <= d * den);
  const wantsDrop = match[4] ? match[4].toUpperCase().startsWith('D') : dropFrame;
  return (near.find(({ dropped }) => dropped > 0 === wantsDrop) ?? near[0])?.id;
}
