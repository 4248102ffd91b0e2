import type { Day, PartId, Take } from '../../day/model.ts';
import { tracksOf } from '../../day/recorders/recorder-parts.ts';
import { isOnRecorder } from '../../day/recorders/rolling.ts';
import { type SampleFormat, sampleFormats } from '../../day/settings/sample-formats.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import { takenAtMs } from '../../day/taken-at.ts';
import { isOpen, takesInOrder } from '../../day/takes.ts';
import { recorderOfCard } from '../../day/wrap/armed-tracks.ts';
import { lengthMs } from '../../day/wrap/day-totals.ts';
import { BIT_DEPTHS } from '../../facts/kinds/day-described.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { CardFields } from '../../facts/kinds/upkeep-logged.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { Card, Recorded } from './card-left.ts';
import type { RecordingFormat } from './media.ts';

const BITS = { '16': 16, '24': 24, '32': 32, '32f': 32 } as const;

/** A bit depth that only a newer version knows fills a card as fast as the deepest known here. */
const MOST_BITS = 32;

/** What a recorder writes with all its tracks armed. One without tracks counts as two. */
export const formatOf = (
  day: Day,
  tracks?: number | null,
  recorder: PartId = FIRST_RECORDER,
): RecordingFormat => formatWith(day, settingsNow(day, recorder), tracks, recorder);

const formatWith = (
  day: Day,
  samples: SampleFormat,
  tracks: number | null | undefined,
  recorder: PartId,
): RecordingFormat => ({
  tracks: tracks ?? (tracksOf(day.rig, recorder).length || 2),
  sampleRate: samples.sampleRate,
  bits: isOneOf(BIT_DEPTHS, samples.bitDepth) ? BITS[samples.bitDepth] : MOST_BITS,
});

/** Tracks in one file: all of them in a poly file, one in a mono file. */
export const formatOfAFile = (
  day: Day,
  tracks?: number | null,
  recorder: PartId = FIRST_RECORDER,
): RecordingFormat =>
  settingsNow(day, recorder).fileLayout === 'mono'
    ? formatOf(day, 1, recorder)
    : formatOf(day, tracks, recorder);

/** The time recorded while a card was in its recorder, the running take up to now included, in ms. */
export const recordedOnMs = (
  day: Day,
  inAtMs: number | null,
  outAtMs: number | null,
  nowMs: number,
  recorder: PartId = FIRST_RECORDER,
): number =>
  takenWhileIn(day, inAtMs, outAtMs, recorder).reduce((sum, { take }) => sum + lengthSoFar(take, nowMs), 0);

/** The takes with sound that a recorder has, from while a card was in it. */
const takenWhileIn = (day: Day, inAtMs: number | null, outAtMs: number | null, recorder: PartId) =>
  takesInOrder(day)
    .filter(({ id, kind }) => kind !== 'mos' && isOnRecorder(day, id, recorder))
    .map((take) => ({ take, at: takenAtMs(day, take) }))
    .filter(({ at }) => (inAtMs === null || at >= inAtMs) && (outAtMs === null || at < outAtMs));

/** What of a card was written in another format than its recorder's current one. */
function writtenOtherwise(day: Day, card: CardFields, nowMs: number): Recorded[] {
  const recorder = recorderOfCard(day, card);
  const formatOfTake = sampleFormats(day, recorder);
  const { sampleRate, bits } = formatOf(day, undefined, recorder);
  return takenWhileIn(day, card.inAtMs ?? null, card.outAtMs ?? null, recorder)
    .map(({ take }) => ({
      ms: lengthSoFar(take, nowMs),
      format: formatWith(day, formatOfTake(take), card.tracks, recorder),
    }))
    .filter(({ format }) => format.sampleRate !== sampleRate || format.bits !== bits);
}

function lengthSoFar(take: Take, nowMs: number): number {
  if (isOpen(take)) return Math.max(0, nowMs - take.rolledAt!);
  return lengthMs(take) ?? 0;
}

export interface DayCard extends Card {
  readonly id: string;
  /** The recorder that it is in, or was. */
  readonly recorder: PartId;
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
      const recorder = recorderOfCard(day, card);
      return {
        id,
        recorder,
        card: name || id,
        capacityBytes: bytes,
        usedBytes: Math.min(usedBytes, bytes),
        format: formatOf(day, tracks, recorder),
        recordedMs: recordedOnMs(day, inAtMs, outAtMs, nowMs, recorder),
        otherwise: writtenOtherwise(day, card, nowMs),
        out: outAtMs !== null && outAtMs <= nowMs,
        copies,
        inAtMs,
        outAtMs,
      };
    });
