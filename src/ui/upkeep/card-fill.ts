import type { CardLeft } from '../../upkeep/due/card-left.ts';
import type { DayCard } from '../../upkeep/due/day-cards.ts';

/** How full a card is, as shares of its size. */
export interface CardFill {
  /** On it before the day. */
  readonly beforeShare: number;
  readonly todayShare: number;
  /** How full it will be at wrap, at the day's pace; `full` if it does not last until then. */
  readonly atWrap: number | 'full' | undefined;
}

/**
 * How full a card is now, and at wrap if it is still in and there is a pace. Example: 64 GB with 16 GB from
 * before and 16 GB of today, full when wrap is halfway to that moment: 1/4, 1/4, and 3/4 at wrap.
 */
export function cardFill(
  { capacityBytes, usedBytes, out }: Pick<DayCard, 'capacityBytes' | 'usedBytes' | 'out'>,
  { bytesLeft, fullAtMs }: Pick<CardLeft, 'bytesLeft' | 'fullAtMs'>,
  nowMs: number,
  wrapAtMs: number | undefined,
): CardFill {
  const beforeShare = usedBytes / capacityBytes;
  const usedShare = 1 - bytesLeft / capacityBytes;
  return {
    beforeShare,
    todayShare: Math.max(0, usedShare - beforeShare),
    atWrap: out ? undefined : atWrapOf(usedShare, fullAtMs, nowMs, wrapAtMs),
  };
}

function atWrapOf(
  usedShare: number,
  fullAtMs: number | undefined,
  nowMs: number,
  wrapAtMs: number | undefined,
): CardFill['atWrap'] {
  if (wrapAtMs === undefined || wrapAtMs <= nowMs || fullAtMs === undefined) return undefined;
  if (fullAtMs < wrapAtMs) return 'full';
  return usedShare + ((1 - usedShare) * (wrapAtMs - nowMs)) / (fullAtMs - nowMs);
}
