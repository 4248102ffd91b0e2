import { answersNow } from '../day/answers/answers.ts';
import type { Day, Part, PartId, TakeId } from '../day/model.ts';
import { REPORT_FORM } from './form.ts';
import type { TakeLine } from './take-lines.ts';
import { type TrackLine, trackKey, trackLinesOf, trackNumber } from './track-lines.ts';

/** What a track carried over a run of takes. MOS takes neither start, end nor break a run. */
export interface LayoutSpan {
  /** Indexes in the list of the recorder's takes, both included; -1 for a layout not recorded with yet. */
  readonly from: number;
  readonly to: number;
  readonly fromTake: TakeId | null;
  /** `'24B/1'`; empty without a take. */
  readonly fromText: string;
  /** Null while nobody was on the track. */
  readonly line: TrackLine | null;
}

export interface TrackLayout {
  readonly track: PartId;
  readonly number: string;
  readonly mix: boolean;
  /** In the order of the day; the first starts at the first take with sound. */
  readonly spans: readonly LayoutSpan[];
}

interface OpenSpan extends LayoutSpan {
  to: number;
  readonly key: string;
}

/** For every track of a recorder, who was on it from which of its takes on. */
export function trackLayoutOf(
  day: Day,
  tracks: readonly Part[],
  takes: readonly TakeLine[],
  form = REPORT_FORM,
): TrackLayout[] {
  const spans = takes.length > 0 ? spansOf(takes) : planned(day, form);
  const sounding = takes.flatMap(({ kind }, at) => (kind === 'mos' ? [] : [at]));
  return tracks.map((track) => ({
    track: track.id,
    number: trackNumber(day, track.id),
    mix: track.mix ?? false,
    spans: withGaps(spans.get(track.id) ?? [], takes, sounding),
  }));
}

function planned(day: Day, form: number): Map<PartId, LayoutSpan[]> {
  const none = { from: -1, to: -1, fromTake: null, fromText: '' };
  return new Map(
    trackLinesOf(day, answersNow(day), undefined, form).map((line) => [line.track, [{ ...none, line }]]),
  );
}

function spansOf(takes: readonly TakeLine[]): Map<PartId, LayoutSpan[]> {
  const spans = new Map<PartId, OpenSpan[]>();
  let previous = -1;
  for (const [at, take] of takes.entries()) {
    if (take.kind === 'mos') continue;
    for (const line of take.lists.flatMap((list) => list.tracks)) {
      const key = trackKey(line);
      const list = spans.get(line.track) ?? [];
      spans.set(line.track, list);
      const last = list.at(-1);
      if (last && last.to === previous && last.key === key) last.to = at;
      else list.push({ from: at, to: at, fromTake: take.takeId, fromText: take.text, line, key });
    }
    previous = at;
  }
  return spans as Map<PartId, LayoutSpan[]>;
}

/** Fills in the runs of takes with sound during which nobody was on the track. */
function withGaps(
  spans: readonly LayoutSpan[],
  takes: readonly TakeLine[],
  sounding: readonly number[],
): LayoutSpan[] {
  if (sounding.length === 0) return spans.map(plain);
  const filled: LayoutSpan[] = [];
  let next = 0;
  const gapUpTo = (end: number): void => {
    const from = sounding[next];
    if (from === undefined || next >= end) return;
    const { takeId, text } = takes[from]!;
    filled.push({ from, to: sounding[end - 1]!, fromTake: takeId, fromText: text, line: null });
  };
  for (const span of spans) {
    gapUpTo(sounding.indexOf(span.from, next));
    filled.push(plain(span));
    next = sounding.indexOf(span.to, next) + 1;
  }
  gapUpTo(sounding.length);
  return filled;
}

const plain = ({ from, to, fromTake, fromText, line }: LayoutSpan): LayoutSpan => ({
  from,
  to,
  fromTake,
  fromText,
  line,
});
