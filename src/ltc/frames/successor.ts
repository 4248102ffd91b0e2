import type { Label } from '../../time/label.ts';
import type { Step } from './frame.ts';

/** How many frames a second are counted; unknown until a second has been seen to end. */
export type Base = 24 | 25 | 30;

export interface Follows {
  readonly step: Step;
  /** Known if a second ended between the two. */
  readonly base?: Base;
  /** Labels 00 and 01 were left out, as drop-frame does. */
  readonly skipped?: boolean;
}

const secondsOf = ({ hours, minutes, seconds }: Label): number => (hours * 60 + minutes) * 60 + seconds;
const DAY = 86_400;

/** How one label follows another, at any count of frames or at a known one; null if it does not. */
export function follows(before: Label, label: Label, base?: Base): Follows | null {
  const passed = secondsOf(label) - secondsOf(before);
  if (passed === 0 && label.frames === before.frames) return { step: 0 };
  const upwards = after(before, label, passed, base);
  if (upwards) return { step: 1, ...upwards };
  const downwards = after(label, before, -passed, base);
  return downwards && { step: -1, ...downwards };
}

function after(before: Label, label: Label, passed: number, base?: Base): Omit<Follows, 'step'> | null {
  if (passed === 0) {
    const isNext = label.frames === before.frames + 1 && (base === undefined || label.frames < base);
    return isNext ? {} : null;
  }
  if (passed !== 1 && passed !== 1 - DAY) return null;
  const counted = before.frames + 1;
  if (counted !== 24 && counted !== 25 && counted !== 30) return null;
  if (base !== undefined && counted !== base) return null;
  const drops = counted === 30 && label.seconds === 0 && label.minutes % 10 !== 0;
  if (label.frames === 2 && drops) return { base: counted, skipped: true };
  if (label.frames !== 0) return null;
  return { base: counted, ...(drops && { skipped: false }) };
}
