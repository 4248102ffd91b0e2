import type { PartId } from '../../day/model.ts';
import { isolated } from '../isolated.ts';
import { recordersText } from '../recorders-text.ts';
import type { LayoutSpan, TrackLayout } from '../track-layout.ts';
import type { TrackList } from '../track-lists.ts';
import { trackText } from './words.ts';

/** One track of the layout in words: who, and from which take on. */
export interface PrintedLayout {
  readonly track: PartId;
  readonly number: string;
  /** `'Lena'`, `'from 24B/3: Dora (muted)'`, `'from 25/1: nobody'`. */
  readonly lines: readonly string[];
}

/** `'Tracks'`; `'Tracks on Cart and Backup'` where recorders have tracks of their own. */
export const tracksTitle = ({ on }: TrackList): string =>
  on.length > 0 ? `Tracks on ${recordersText(on)}` : 'Tracks';

/** The tracks somebody was on in some take. */
export const usedTracks = (layout: readonly TrackLayout[]): PrintedLayout[] =>
  layout.filter(isUsed).map(({ track, number, spans }) => ({
    track,
    number,
    lines: spans.flatMap((span, at) => spanText(span, at)),
  }));

/** Numbers of the tracks nobody was on all day. */
export const unusedTracks = (layout: readonly TrackLayout[]): string[] =>
  layout.filter((track) => !isUsed(track)).map(({ number }) => number);

const isUsed = ({ spans }: TrackLayout): boolean => spans.some(({ line }) => line !== null);

/** A track that was empty at first begins with the first take that had somebody on it. */
function spanText({ fromText, line }: LayoutSpan, at: number): string[] {
  const who = line ? trackText(line) : 'nobody';
  if (at > 0) return [`from ${isolated(fromText)}: ${who}`];
  return line ? [who] : [];
}
