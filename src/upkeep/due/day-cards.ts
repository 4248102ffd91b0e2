import type { Day, Take } from '../../day/model.ts';
import { type SampleFormat, sampleFormats } from '../../day/settings/sample-formats.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import { takenAtMs } from '../../day/taken-at.ts';
import { isOpen, takesInOrder } from '../../day/takes.ts';
import { lengthMs } from '../../day/wrap/day-totals.ts';
import { BIT_DEPTHS } from '../../facts/kinds/day-described.ts';
import type { CardFields } from '../../facts/kinds/upkeep-logged.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { Card, Recorded } from './card-left.ts';
import type { RecordingFormat } from './media.ts';

const BITS = { '16': 16, '24': 24, '32': 32, '32f': 32 } as const;

/** A bit depth that only a newer version knows fills a card as fast as the deepest known here. */
const MOST_BITS = 32;

/** What the recorder writes with all its tracks armed. A rig without tracks counts as two. */
export const formatOf = (day: Day, tracks?: number | null): RecordingFormat =>
  formatWith(day, settingsNow(day), tracks);

const formatWith = (day: Day, samples: SampleFormat, tracks?: number | null): RecordingFormat => ({
  tracks: tracks ?? (day.rig.tracks.length || 2),
  sampleRate: samples.sampleRate,
  bits: isOneOf(BIT_DEPTHS, samples.bitDepth) ? BITS[samples.bitDepth] : MOST_BITS,
});

/** Tracks in one file: all of them in a poly file, one in a mono file. */
export const formatOfAFile = (day: Day, tracks?: number | null): RecordingFormat =>
  settingsNow(day).fileLayout === 'mono' ? formatOf(day, 1) : formatOf(day, tracks);

/** The time recorded while a card was in, the running take up to now included, in ms. */
export const recordedOnMs = (
  day: Day,
  inAtMs: number | null,
  outAtMs: number | null,
  nowMs: number,
): number => takenWhileIn(day, inAtMs, outAtMs).reduce((sum, { take }) => sum + lengthSoFar(take, nowMs), 0);

/** The takes with sound that rolled while a card was in. */
const takenWhileIn = (day: Day, inAtMs: number | null, outAtMs: number | null) =>
  takesInOrder(day)
    .filter(({ kind }) => kind !== 'mos')
    .map((take) => ({ take, at: takenAtMs(day, take) }))
    .filter(({ at }) => (inAtMs === null || at >= inAtMs) && (outAtMs === null || at < outAtMs));

/** What of a card was written in another format than the recorder's current one. */
function writtenOtherwise(day: Day, card: CardFields, nowMs: number): Recorded[] {
  const formatOfTake = sampleFormats(day);
  const { sampleRate, bits } = formatOf(day);
  return takenWhileIn(day, card.inAtMs ?? null, card.outAtMs ?? null)
    .map(({ take }) => ({
      ms: lengthSoFar(take, nowMs),
      format: formatWith(day, formatOfTake(take), card.tracks),
    }))
    .filter(({ format }) => format.sampleRate !== sampleRate || format.bits !== bits);
}

function lengthSoFar(take: Take, nowMs: number): number {
  if (isOpen(take)) return Math.max(0, nowMs - take.rolledAt!);
  return lengthMs(take) ?? 0;
}

export interface DayCard extends Card {
  readonly id: string;
  /** It was taken out: nothing more is written to it. */
  readonly out: boolean;
  readonly copies: number;
  readonly inAtMs: number | null;
  readonly outAtMs: number | null;
}

/** Every card, oldest description first, with what the day has put on it. Removed ones are left out. */
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
        otherwise: writtenOtherwise(day, card, nowMs),
        out: outAtMs !== null && outAtMs <= nowMs,
        copies,
        inAtMs,
        outAtMs,
      };
    });
