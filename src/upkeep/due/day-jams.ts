import type { Day } from '../../day/model.ts';
import { rateNow } from '../../day/settings/settings.ts';
import type { JamSaid } from '../../day/upkeep-facts.ts';
import { type Drift, driftBetween } from '../../ltc/measure/compare.ts';
import type { RateId } from '../../time/rate.ts';
import { frameMs } from './drift.ts';
import type { Jam } from './jams.ts';

/** A jam as planned with: what was heard to be apart is apart at worst by that and its doubt. */
export const jamOf = ({ device, from, atMs, heard }: JamSaid): Omit<Jam, 'tolerancePpm'> => ({
  device,
  from,
  atMs,
  ...(heard && { offMs: Math.abs(heard.offMs) + heard.doubtMs }),
});

/** What was last heard of a device. */
export interface LastHeard {
  readonly from: string;
  readonly atMs: number;
  readonly offMs: number;
  readonly doubtMs: number;
  /** From the comparison before it, if the device was not jammed in between. */
  readonly drift: Drift | undefined;
}

/** The last comparison of a device, unless it was jammed since; and how far it drifts by the first since it was. */
export function lastHeard(day: Day, device: string, rate: RateId): LastHeard | undefined {
  const of = day.upkeep.jams.filter((jam) => jam.device === device).toSorted((a, b) => a.atMs - b.atMs);
  const last = of.at(-1);
  if (!last?.heard) return undefined;
  const sinceJam = of.slice(of.findLastIndex(({ heard }) => !heard) + 1);
  const first = sinceJam.find(({ from }) => from === last.from);
  const drift =
    first?.heard &&
    driftBetween(compared(first.atMs, first.heard, rate), compared(last.atMs, last.heard, rate), rate);
  return { from: last.from, atMs: last.atMs, ...last.heard, drift: drift?.ok ? drift.value : undefined };
}

/** At worst, how far a device drifts by what was heard: stands in for a tolerance that nobody entered. */
export function heardPpm(day: Day, device: string): number | undefined {
  const rate = rateNow(day);
  const drift = rate && lastHeard(day, device, rate)?.drift;
  return drift ? Math.min(MOST_PPM, Math.abs(drift.ppm) + drift.doubtPpm) : undefined;
}

/** As much as a tolerance can be. */
const MOST_PPM = 10_000;

const compared = (atMs: number, { offMs, doubtMs }: NonNullable<JamSaid['heard']>, rate: RateId) => ({
  atMs,
  ms: offMs,
  doubtMs,
  frames: offMs / frameMs(rate),
  doubtFrames: doubtMs / frameMs(rate),
});
