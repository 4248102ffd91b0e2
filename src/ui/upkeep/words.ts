import type { DueItem, DueReason } from '../../upkeep/due/due-list.ts';
import type { DueAction } from '../../upkeep/due-action.ts';
import type { RunCaution } from '../../upkeep/wiring/direct-current.ts';
import type { LeadLimit } from '../../upkeep/wiring/ethernet-power.ts';
import { clockTime } from '../words/times.ts';
import type { Short } from './time-bars.ts';

/** A clock time, with the day if it is not today: `13:30`, `07:00 tomorrow`. */
export function clockOf(atMs: number, zone: number, nowMs: number): string {
  const dayOf = (ms: number): number => Math.floor((ms + zone * 60_000) / 86_400_000);
  const days = dayOf(atMs) - dayOf(nowMs);
  const time = clockTime(atMs, zone);
  if (days === 0) return time;
  if (days === 1) return `${time} tomorrow`;
  if (days === -1) return `${time} yesterday`;
  return days > 0 ? `${time}, ${days} days on` : `${time}, ${-days} days ago`;
}

/** Hours in words: `5 h`, `2 h 05`, `40 min`. */
export function hoursWords(hours: number): string {
  const minutes = Math.max(0, Math.round(hours * 60));
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return rest === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${String(rest).padStart(2, '0')}`;
}

export const framesWords = (frames: number): string =>
  `${frames.toFixed(frames < 10 ? 2 : 0)} ${frames === 1 ? 'frame' : 'frames'}`;

/** A figure with at most so many decimals and no trailing zeros. */
export const figureWords = (value: number, places = 1): string => String(Number(value.toFixed(places)));

export const gigabytes = (bytes: number): string => `${figureWords(bytes / 1e9, 1)} GB`;

/** What to do, in a word; never `now` while a take is open. */
export function actionWords(item: Pick<DueItem, 'action' | 'dueAtMs'>, zone: number, nowMs: number): string {
  const words: Record<DueAction, string> = {
    now: 'now',
    'at-cut': 'at the cut',
    later: item.dueAtMs === undefined ? '' : clockOf(item.dueAtMs, zone, nowMs),
  };
  return words[item.action];
}

interface Saying {
  readonly zone: number;
  readonly nowMs: number;
  readonly nameOf: (id: string) => string;
}

export function reasonWords(reason: DueReason, { zone, nowMs, nameOf }: Saying): string {
  const clock = (ms: number): string => clockOf(ms, zone, nowMs);
  switch (reason.code) {
    case 'cells-margin':
      return `flat about ${clock(reason.emptyAtMs)}`;
    case 'cells-empty':
      return `should be flat since ${clock(reason.emptyAtMs)}`;
    case 'cells-not-to-meal':
      return reason.reach === 'runs-out'
        ? 'will not last to the meal break'
        : 'may not last to the meal break';
    case 'cells-not-to-wrap':
      return reason.reach === 'runs-out' ? 'will not last to wrap' : 'may not last to wrap';
    case 'runtime-only-planned':
      return 'battery life not measured';
    case 'drift':
      return `${framesWords(reason.driftFrames)} at worst since ${clock(reason.sinceMs)}, from ${nameOf(reason.from)}`;
    case 'card-left':
      return `${hoursWords(reason.hoursLeft)} of recording left`;
    case 'card-not-to-wrap':
      return `full about ${clock(reason.fullAtMs)}, before wrap`;
  }
}

/** What cells or a card do not last to: `flat before wrap`. */
export const shortWords = ({ to, how }: Short, end: 'flat' | 'full'): string =>
  how === 'out' ? `${end} before ${to}` : `may not last to ${to}`;

export const LIMIT_WORDS: Record<LeadLimit, string> = {
  'data-length': 'data: the longest channel of the standards',
  'device-voltage': 'voltage at the box falls below its minimum',
  'loop-resistance': 'the loop is longer than the class was made for',
  'source-power': 'the source gives more than its class',
  'no-solution': 'the lead cannot carry the load at all',
};

export const RUN_CAUTION_WORDS: Record<RunCaution, string> = {
  'drop-above-aim': 'drops more than 3 % of the supply (common practice, no source)',
  'below-device-minimum': 'below the minimum voltage of the device',
  'above-cord-rating': 'above the lowest cord rating of this gauge',
  'no-cord-rating': 'no cord rating is known for this gauge',
};

/** A shorter wording for tight spaces. */
export const RUN_CAUTION_SHORT: Record<RunCaution, string> = {
  'drop-above-aim': 'drop above 3 %',
  'below-device-minimum': 'voltage too low',
  'above-cord-rating': 'above the cord rating',
  'no-cord-rating': 'no cord rating',
};

export const LIMIT_SHORT: Record<LeadLimit, string> = {
  'data-length': 'data',
  'device-voltage': 'volts',
  'loop-resistance': 'loop',
  'source-power': 'source',
  'no-solution': 'nothing gets through',
};

export const CABLE_WORDS: Record<string, string> = {
  'awg-22': 'AWG 22, often cat 7',
  'awg-23': 'AWG 23, often cat 6, 6A, 7',
  'awg-24': 'AWG 24, often cat 5e',
  'awg-26': 'AWG 26, thin patch',
  'tia-solid-limit': 'the most TIA allows, solid',
  'iec-solid-limit': 'the most IEC allows, solid',
  'tia-stranded-limit': 'the most TIA allows, stranded',
  'iec-stranded-limit': 'the most IEC allows, stranded',
};
