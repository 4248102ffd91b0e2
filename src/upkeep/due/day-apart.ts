import type { Day } from '../../day/model.ts';
import { rateNow } from '../../day/settings/settings.ts';
import { devicesOf, headPpm } from './day-devices.ts';
import { jamOf } from './day-jams.ts';
import { type Jam, worstApart } from './jams.ts';

export interface Apart {
  readonly devices: readonly [string, string];
  readonly frames: number;
}

const MOST_DEVICES = 64;

/** Of the devices jammed from one source, the two that may differ most; undefined with fewer than two. */
export function worstPair(day: Day, nowMs: number): Apart | undefined {
  const devices = devicesOf(day);
  const rate = rateNow(day);
  if (!rate) return undefined;
  const last = new Map<string, Jam>();
  for (const jam of day.upkeep.jams) {
    const ppm = devices.find(({ id }) => id === jam.device)?.ppm;
    const known = last.get(jam.device);
    if (ppm !== undefined && jam.atMs <= nowMs && (known?.atMs ?? 0) <= jam.atMs)
      last.set(jam.device, { ...jamOf(jam), tolerancePpm: ppm });
  }
  const jams = [...last.values()].slice(0, MOST_DEVICES);
  let worst: Apart | undefined;
  jams.forEach((one, at) => {
    for (const other of jams.slice(at + 1)) {
      const sourcePpm = headPpm(day, one.from);
      // A source of unknown clock cancels out only if both were jammed at once.
      if (sourcePpm === undefined && one.atMs !== other.atMs) continue;
      const check = { nowMs, rate, referencePpm: sourcePpm ?? 0 };
      const apart = worstApart(one, other, check);
      if (apart.ok && apart.value > (worst?.frames ?? -1))
        worst = { devices: [one.device, other.device], frames: apart.value };
    }
  });
  return worst;
}
