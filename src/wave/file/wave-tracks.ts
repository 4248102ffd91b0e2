import type { IXmlTrack } from '../ixml/ixml-lists.ts';
import type { Warn } from '../warning.ts';
import type { WaveParts } from './wave-parts.ts';

/** One channel of one file. */
export interface WaveTrack {
  /** Place in the file's interleave, from 1. */
  readonly interleave: number;
  /** The machine's channel number, if the file has it. */
  readonly channel: number | undefined;
  readonly name: string | undefined;
  readonly function: string | undefined;
}

/** More channels than any recorder has; a damaged format may claim 65535. */
const MOST_TRACKS = 1024;

/** One track per channel of the format, at most 1024, named by iXML or, without a list, by TRK lines. */
export function resolveTracks(parts: WaveParts, warn: Warn): readonly WaveTrack[] {
  const listed = parts.ixml?.tracks ?? [];
  const channels = Math.min(MOST_TRACKS, parts.format?.channels ?? listed.length);
  if (listed.length === 0) return tracksFromLines(parts, channels);
  const placed = placeTracks(listed);
  const beyond = [...placed.keys()].filter((interleave) => interleave < 1 || interleave > channels);
  if (beyond.length > 0)
    warn({
      code: 'track-index-out-of-range',
      at: parts.ixml?.at ?? 0,
      channels,
      indexes: beyond.slice(0, 20),
    });
  return Array.from({ length: channels }, (_, index) => {
    const track = placed.get(index + 1);
    return {
      interleave: index + 1,
      channel: track?.channelIndex,
      name: track?.name,
      function: track?.function,
    };
  });
}

/** Tracks by interleave position; those without one take the first free position, in order. */
function placeTracks(listed: readonly IXmlTrack[]): Map<number, IXmlTrack> {
  const placed = new Map<number, IXmlTrack>();
  const unplaced: IXmlTrack[] = [];
  for (const track of listed) {
    if (track.interleaveIndex === undefined) unplaced.push(track);
    else if (!placed.has(track.interleaveIndex)) placed.set(track.interleaveIndex, track);
  }
  let next = 1;
  for (const track of unplaced) {
    while (placed.has(next)) next += 1;
    placed.set(next, track);
  }
  return placed;
}

function tracksFromLines(parts: WaveParts, channels: number): readonly WaveTrack[] {
  const named = parts.lines?.tracks ?? [];
  // A mono file of a set names only its own channel, whatever its number.
  const single = channels === 1 && named.length === 1 ? named[0] : undefined;
  return Array.from({ length: channels }, (_, index) => {
    const line = single ?? named.find(({ number }) => number === index + 1);
    return { interleave: index + 1, channel: line?.number, name: line?.name, function: undefined };
  });
}
