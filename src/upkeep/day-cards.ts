import { lengthMs } from '../day/day-totals.ts';
import { filledHeader } from '../day/filled-header.ts';
import type { Day, Take } from '../day/model.ts';
import { isOpen, takesInOrder } from '../day/takes.ts';
import type { Card } from './card-left.ts';
import type { RecordingFormat } from './media.ts';

const BITS = { '16': 16, '24': 24, '32': 32, '32f': 32 } as const;

/** What the recorder writes with all its tracks armed. A rig without tracks counts as two. */
export function formatOf(day: Day, tracks?: number | null): RecordingFormat {
  const { sampleRate, bitDepth } = filledHeader(day.header);
  return { tracks: tracks ?? (day.rig.tracks.length || 2), sampleRate, bits: BITS[bitDepth] };
}

/** Tracks in one file: all of them in a poly file, one in a mono file. */
export const formatOfAFile = (day: Day, tracks?: number | null): RecordingFormat =>
  day.header.fileLayout === 'mono' ? formatOf(day, 1) : formatOf(day, tracks);

/** The time recorded while a card was in, the running take up to now included, in ms. */
export function recordedOnMs(day: Day, inAtMs: number | null, outAtMs: number | null, nowMs: number): number {
  const saidAt = new Map(day.line.map(({ fact }) => [fact.id, fact.at]));
  return takesInOrder(day)
    .filter(({ kind }) => kind !== 'mos')
    .filter((take) => {
      const at = take.rolledAt ?? saidAt.get(take.id) ?? 0;
      return (inAtMs === null || at >= inAtMs) && (outAtMs === null || at < outAtMs);
    })
    .reduce((sum, take) => sum + lengthSoFar(take, nowMs), 0);
}

function lengthSoFar(take: Take, nowMs: number): number {
  if (isOpen(take)) return Math.max(0, nowMs - take.rolledAt!);
  return lengthMs(take) ?? 0;
}

/** A card as the day has it. */
export interface DayCard extends Card {
  readonly id: string;
  /** It came out: nothing more is written to it. */
  readonly out: boolean;
  readonly copies: number;
  readonly inAtMs: number | null;
  readonly outAtMs: number | null;
}

/** Every card described and not struck, first described first, with what the day has put on it. */
export const cardsOf = (day: Day, nowMs: number): DayCard[] =>
  [...day.upkeep.cards]
    .filter(([, { struck, bytes }]) => !struck && bytes)
    .map(([id, card]) => {
      const { name, bytes = 0, usedBytes = 0, tracks, inAtMs = null, outAtMs = null, copies = 0 } = card;
      return {
        id,
        card: name || id,
        capacityBytes: bytes,
        usedBytes: Math.min(usedBytes, bytes),
        format: formatOf(day, tracks),
        recordedMs: recordedOnMs(day, inAtMs, outAtMs, nowMs),
        out: outAtMs !== null && outAtMs <= nowMs,
        copies,
        inAtMs,
        outAtMs,
      };
    });
