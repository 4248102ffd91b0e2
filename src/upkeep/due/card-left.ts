import { fail, ok, type Result } from '../../shared/result.ts';
import { actionAt, type DueAction } from '../due-action.ts';
import { firstBadQuantity, moment } from '../quantity.ts';
import { bytesPerSecond, OVERHEAD, type RecordingFormat } from './media.ts';

/** Recorded time in one format. */
export interface Recorded {
  readonly ms: number;
  readonly format: RecordingFormat;
}

/** A card (or drive) being recorded to, and what the day has put on it. */
export interface Card {
  readonly card: string;
  readonly capacityBytes: number;
  /** Bytes on it before the day's first take. */
  readonly usedBytes: number;
  readonly format: RecordingFormat;
  /** Length of all the day's takes on it, the running one included, in ms. */
  readonly recordedMs: number;
  /** The part of that in another format; none by default. */
  readonly otherwise?: readonly Recorded[];
}

export interface CardDay {
  readonly nowMs: number;
  readonly takeOpen: boolean;
  /** When recording could begin; with the recorded time it gives the day's pace. */
  readonly callAtMs: number;
  readonly wrapAtMs?: number;
  /** Change the card with this many recording hours left; half an hour by default. */
  readonly reserveHours?: number;
}

export interface CardLeft {
  readonly card: string;
  readonly bytesLeft: number;
  /** Hours of recording, not of the day. */
  readonly hoursLeft: number;
  /** Part of the day so far spent recording, 0 to 1. */
  readonly pace: number;
  /**
   * When only the reserve is left, and when it is full, at the day's pace (on the reserve: as if recording
   * all the time).
   */
  readonly dueAtMs?: number;
  readonly fullAtMs?: number;
  /** Missing without a wrap ahead, or without a pace if only a pace could tell. */
  readonly lastsToWrap?: boolean;
  readonly action: DueAction;
}

/**
 * What is left on a card after the day's recorded time, and when it will be full at the day's pace. Example:
 * an empty 64 GB card, 8 tracks, 24/48, after 2 h recorded in 6 h: 13.3 h left, a pace of a third.
 */
export function cardLeft(card: Card, day: CardDay): Result<CardLeft> {
  const { nowMs, callAtMs, wrapAtMs, reserveHours = 0.5 } = day;
  const problem = firstBadQuantity([
    { field: 'capacityBytes', value: card.capacityBytes, min: 1, max: 1e18 },
    { field: 'usedBytes', value: card.usedBytes, min: 0, max: card.capacityBytes },
    moment('nowMs', nowMs),
    moment('wrapAtMs', wrapAtMs ?? 0),
    { field: 'callAtMs', value: callAtMs, min: nowMs - 48 * 3_600_000, max: nowMs },
    { field: 'recordedMs', value: card.recordedMs, min: 0, max: 48 * 3_600_000 },
    { field: 'reserveHours', value: reserveHours, min: 0, max: 48 },
  ]);
  if (problem) return fail(problem);
  const rate = bytesPerSecond(card.format);
  if (!rate.ok) return rate;
  const bytesPerMs = (rate.value * OVERHEAD) / 1000;
  const recorded = bytesOf(card, bytesPerMs);
  if (!recorded.ok) return recorded;
  const bytesLeft = Math.max(0, Math.floor(card.capacityBytes - card.usedBytes - recorded.value));
  const hoursLeft = bytesLeft / bytesPerMs / 3_600_000;
  const pace = Math.min(1, card.recordedMs / Math.max(1, nowMs - callAtMs));
  const times = timesAtPace(nowMs, hoursLeft, reserveHours, pace);
  return ok({
    card: card.card,
    bytesLeft,
    hoursLeft,
    pace,
    ...times,
    ...wrapAnswer(nowMs, wrapAtMs, hoursLeft - reserveHours, times?.dueAtMs),
    action: actionAt(hoursLeft <= reserveHours ? nowMs : Number.MAX_VALUE, nowMs, day.takeOpen),
  });
}

function bytesOf({ recordedMs, otherwise = [] }: Card, bytesPerMs: number): Result<number> {
  let bytes = recordedMs * bytesPerMs;
  for (const { ms, format } of otherwise) {
    const rate = bytesPerSecond(format);
    if (!rate.ok) return rate;
    bytes += ms * ((rate.value * OVERHEAD) / 1000 - bytesPerMs);
  }
  return ok(bytes);
}

function timesAtPace(
  nowMs: number,
  hoursLeft: number,
  reserveHours: number,
  pace: number,
): { dueAtMs: number; fullAtMs: number } | undefined {
  if (hoursLeft <= reserveHours) {
    return { dueAtMs: nowMs, fullAtMs: nowMs + Math.round(hoursLeft * 3_600_000) };
  }
  // Less than a second per hour, or more than a year ahead, is no basis for a prediction.
  if (pace < 1 / 3600 || hoursLeft / pace > 24 * 366) return undefined;
  const at = (hours: number): number => nowMs + Math.round((hours / pace) * 3_600_000);
  return { dueAtMs: at(hoursLeft - reserveHours), fullAtMs: at(hoursLeft) };
}

function wrapAnswer(
  nowMs: number,
  wrapAtMs: number | undefined,
  hoursToReserve: number,
  dueAtMs: number | undefined,
): { lastsToWrap?: boolean } {
  if (wrapAtMs === undefined || wrapAtMs <= nowMs) return {};
  // Recording all the way to wrap is the most possible, so this needs no pace.
  if (hoursToReserve * 3_600_000 >= wrapAtMs - nowMs) return { lastsToWrap: true };
  return dueAtMs === undefined ? {} : { lastsToWrap: dueAtMs >= wrapAtMs };
}
