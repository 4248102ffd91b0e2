import type { Carrier, Guards } from '../carrier.ts';
import { type Marks, mark } from './margin-map.ts';

/**
 * One product family seen from a new carrier x: `scale` times x must stay a guard away from every centre that
 * `markAll` marks.
 */
export interface CentreSet {
  readonly family: number;
  readonly scale: number;
  readonly guardKhz: number;
  /** Marks the centres in which the carrier at one index plays the leading part. */
  readonly markFrom: (active: readonly Carrier[], place: number, marks: Marks) => void;
}

/** x is hit by 2u-w, or as the B of 2u-x it hits w. Either way u transmits, and w transmits or listens. */
function markTwoToneThird(active: readonly Carrier[], place: number, marks: Marks): void {
  const u = active[place]!;
  if (!u.transmitting) return;
  for (const w of active) if (w !== u) mark(marks, 2 * u.khz - w.khz);
}

/** 2x-u hits w: 2x is near u + w, where one transmits and the other listens. */
function markHalfway(active: readonly Carrier[], place: number, marks: Marks): void {
  const u = active[place]!;
  if (u.transmitting) for (const w of active) if (w !== u && w.victim) mark(marks, u.khz + w.khz);
}

/**
 * x, w against u, v: whichever of the four is the victim, x is near u + v - w, and at least two of the other
 * three transmit (the third transmits too, or listens).
 */
function markThreeTone(active: readonly Carrier[], place: number, { cells, baseKhz }: Marks): void {
  const u = active[place]!;
  for (let other = place + 1; other < active.length; other += 1) {
    const v = active[other]!;
    if (!u.transmitting && !v.transmitting) continue;
    const anyThird = u.transmitting && v.transmitting;
    const cell = u.khz + v.khz - baseKhz;
    for (let third = 0; third < active.length; third += 1) {
      const w = active[third]!;
      if (third === place || third === other || !(anyThird || w.transmitting)) continue;
      const at = cell - w.khz;
      if (at >= 0 && at < cells.length) cells[at] = 1;
    }
  }
}

const markFifth =
  (centre: (u: number, w: number) => number, wFits: (w: Carrier) => boolean) =>
  (active: readonly Carrier[], place: number, marks: Marks): void => {
    const u = active[place]!;
    if (u.transmitting) for (const w of active) if (w !== u && wFits(w)) mark(marks, centre(u.khz, w.khz));
  };

/** Every enabled family, as the centres a new carrier has to avoid. */
export function centreSets(guards: Guards): readonly CentreSet[] {
  const { twoToneThirdKhz, threeToneThirdKhz, twoToneFifthKhz } = guards;
  const third = { family: 1, guardKhz: twoToneThirdKhz };
  const fifth = { family: 3, guardKhz: twoToneFifthKhz };
  const sets: CentreSet[] = [
    { ...third, scale: 1, markFrom: markTwoToneThird },
    { ...third, scale: 2, markFrom: markHalfway },
    { family: 2, guardKhz: threeToneThirdKhz, scale: 1, markFrom: markThreeTone },
    {
      ...fifth,
      scale: 1,
      markFrom: markFifth(
        (u, w) => 3 * u - 2 * w,
        ({ transmitting }) => transmitting,
      ),
    },
    {
      ...fifth,
      scale: 2,
      markFrom: markFifth(
        (u, w) => 3 * u - w,
        ({ victim }) => victim,
      ),
    },
    {
      ...fifth,
      scale: 3,
      markFrom: markFifth(
        (u, w) => 2 * u + w,
        ({ victim }) => victim,
      ),
    },
  ];
  return sets.filter(({ guardKhz }) => guardKhz > 0);
}
