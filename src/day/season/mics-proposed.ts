import type { KnownMic } from './season.ts';

/** A mic of today: the name of its pack, and whether anything was said of it. */
export interface MicToday {
  readonly pack: string;
  readonly isSaid: boolean;
}

/**
 * For each mic of which nothing was said, the one that was on the same pack; else one that was on a pack that is not
 * here today, each once.
 */
export function micsProposed(
  today: readonly MicToday[],
  known: readonly KnownMic[],
): readonly (KnownMic | undefined)[] {
  const here = new Set(today.map(({ pack }) => pack));
  const others = known.filter(({ pack }) => !here.has(pack));
  return today.map(({ pack, isSaid }) => {
    if (isSaid) return undefined;
    return known.find((one) => one.pack === pack) ?? others.shift();
  });
}
