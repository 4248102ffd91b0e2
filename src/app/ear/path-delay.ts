import { labelOfFrame } from '../../time/label.ts';
import { type RateId, rateOf } from '../../time/rate.ts';

/** How late this phone hears: measured once against taps, and kept. */
export interface PathDelay {
  readonly ms: number;
  /** How far the taps strayed. */
  readonly spreadMs: number;
}

const KEY = 'rollbook-microphone-delay';
/** Nobody taps seconds off, and no phone hears so late: such a value was damaged. */
const MOST_MS = 600;

export function keptDelay(): PathDelay | undefined {
  try {
    const [ms, spreadMs] = (localStorage.getItem(KEY) ?? '').split(' ').map(Number);
    return ms === undefined || spreadMs === undefined || !(Math.abs(ms) <= MOST_MS) || !(spreadMs <= MOST_MS)
      ? undefined
      : { ms, spreadMs };
  } catch {
    // Storage refused: it is unknown.
    return undefined;
  }
}

export function keepDelay(delay: PathDelay | undefined): void {
  try {
    if (delay) localStorage.setItem(KEY, `${Math.round(delay.ms)} ${Math.ceil(delay.spreadMs)}`);
    else localStorage.removeItem(KEY);
  } catch {
    // Storage refused: it holds for this window only.
  }
}

/** A frame, and when it was heard by the page's counter. */
export interface HeardAt {
  readonly frames: number;
  readonly rate: RateId;
  readonly atMs: number;
}

/**
 * The delay from taps made as the display changed to a whole second: how much later than each tap that second was
 * heard; the median, and how far half of the taps stray from it. Undefined below three taps.
 */
export function delayFromTaps(taps: readonly number[], heard: HeardAt): PathDelay | undefined {
  if (taps.length < 3) return undefined;
  const { num, den, base } = rateOf(heard.rate);
  const secondMs = (1000 * base * den) / num;
  const label = labelOfFrame(heard.frames, heard.rate);
  const secondAtMs = heard.atMs - (label.frames * 1000 * den) / num;
  const late = taps.map((tap) => {
    const after = (((secondAtMs - tap) % secondMs) + secondMs) % secondMs;
    // Nearer to the second before: the tap came late, or the phone hears at once.
    return after > MOST_MS ? after - secondMs : after;
  });
  const ms = median(late);
  return { ms, spreadMs: median(late.map((one) => Math.abs(one - ms))) };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
