import type { PartId, TakeId } from '../../day/model.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { unusedTracks } from '../printed/layout-words.ts';
import { type PrintedTake, printedTake } from '../printed/printed-take.ts';
import { trackText, trackUnit } from '../printed/words.ts';
import { recordersText } from '../recorders-text.ts';
import type { Extras } from '../revision/revision.ts';
import { framesAt } from '../take-end.ts';
import type { TakeLine } from '../take-lines.ts';
import type { TrackLayout } from '../track-layout.ts';
import { type TrackLine, trackKey } from '../track-lines.ts';
import type { TrackList } from '../track-lists.ts';

/** A part of a track list. */
export interface ListedUnit {
  /** `'5 Lena'`; in a list told by an earlier one `'as 45A/1 but for track 7: Lena'`. */
  readonly text: string;
  /** Whether it is new since the take before. */
  readonly isNew: boolean;
}

/** A take as a line of the list: its times to the frame, and its tracks only where they change. */
export interface ListedTake extends Omit<PrintedTake, 'lists'> {
  readonly takeId: TakeId;
  readonly rollHeading: string;
  readonly end: string;
  /** Of each recorder with its own tracks, where they change: none if all are as before, or it has no sound. */
  readonly lists: readonly (readonly ListedUnit[])[];
  /** Whether the revision says something else of it than the report before. */
  readonly isChanged: boolean;
}

/** The takes of a report in order. What a revision changed is marked at each. */
export function takeList(
  { takes, layout }: Pick<ReportModel, 'takes' | 'layout'>,
  { revision }: Extras,
): ListedTake[] {
  const marks = new Map<TakeId, string>();
  for (const { takes: touched, part, kind } of revision?.changes ?? []) {
    const word = part === 'take' && kind === 'added' ? 'new' : 'changed';
    for (const take of touched) if (marks.get(take) !== 'new') marks.set(take, word);
  }
  const lists = trackLists(takes, layout);
  return takes.map((take, at) => {
    const printed = printedTake(take);
    const mark = marks.get(take.takeId);
    return {
      ...printed,
      takeId: take.takeId,
      rollHeading: take.rollHeading,
      end: take.end,
      length: lengthOf(take),
      words: mark ? [...printed.words, `${mark} in ${revision!.letter}`] : printed.words,
      lists: lists[at]!,
      isChanged: mark !== undefined,
    };
  });
}

/** To the frame, counted as its start is: start and length make the end. */
function lengthOf({ exact: { start, length }, length: unread }: TakeLine): string {
  if (!length) return unread;
  const rate = start?.rate ?? length.rate;
  return formatTimecode(framesAt(length, rate), rate);
}

/** The tracks that nobody was on all day, as a line of the totals. */
export function nobodyOn(lists: readonly TrackList[]): (readonly [label: string, text: string])[] {
  const said = lists.flatMap(({ on, layout }) => {
    const unused = unusedTracks(layout);
    if (unused.length === 0) return [];
    const tracks = `${unused.length === 1 ? 'track' : 'tracks'} ${unused.map(isolated).join(', ')}`;
    return [on.length > 0 ? `${recordersText(on)}: ${tracks}` : tracks];
  });
  return said.length > 0 ? [['Nobody on', said.join('\n')]] : [];
}

/** A list that was printed whole, by which later ones are told. */
interface Whole {
  readonly name: string;
  readonly lines: ReadonlyMap<PartId, TrackLine>;
}

/** Nobody wants to put together in the mind what more than a few exceptions make. */
const MOST_EXCEPTIONS = 5;

/** What was last printed of one recorder's tracks. */
interface Told {
  whole: Whole | undefined;
  before: readonly TrackLine[];
}

/** For every take its tracks in words, where they are others than at the take with sound before it. */
function trackLists(
  takes: readonly TakeLine[],
  layout: readonly TrackLayout[],
): (readonly (readonly ListedUnit[])[])[] {
  const nameOf = namesApart(takes);
  const place = new Map(layout.map(({ track }, at) => [track, at]));
  const told = new Map<PartId, Told>();
  return takes.map((take) => {
    if (take.kind === 'mos') return [];
    return take.lists
      .map(({ owner, on, tracks }) => {
        const last = told.get(owner) ?? { whole: undefined, before: [] };
        told.set(owner, last);
        return withLead(on, listTold(last, tracks, nameOf(take), place));
      })
      .filter((units) => units.length > 0);
  });
}

/** Whose tracks they are, where several recorders have their own. */
function withLead(on: readonly string[], units: readonly ListedUnit[]): readonly ListedUnit[] {
  const [first, ...rest] = units;
  if (!first || on.length === 0) return units;
  return [{ ...first, text: `${recordersText(on)}: ${first.text}` }, ...rest];
}

function listTold(
  last: Told,
  tracks: readonly TrackLine[],
  name: string,
  place: ReadonlyMap<PartId, number>,
): readonly ListedUnit[] {
  const { before: old, whole } = last;
  if (tracks === old) return [];
  last.before = tracks;
  const fresh = exceptions(byTrack(old), tracks, place);
  if (fresh.length === 0) return [];
  const isNew = new Set(fresh.map(({ track }) => track));
  const but = whole && exceptions(whole.lines, tracks, place);
  if (whole && but && but.length <= MOST_EXCEPTIONS && but.length * 2 <= tracks.length)
    return toldBy(isolated(whole.name), but, isNew);
  last.whole = { name, lines: byTrack(tracks) };
  if (tracks.length === 0) return [{ text: 'nobody on any track', isNew: true }];
  return tracks.map((line) => ({ text: trackUnit(line), isNew: old.length > 0 && isNew.has(line.track) }));
}

const byTrack = (tracks: readonly TrackLine[]): Map<PartId, TrackLine> =>
  new Map(tracks.map((line) => [line.track, line]));

/** A take's name; with its start if another has the same. */
function namesApart(takes: readonly TakeLine[]): (take: TakeLine) => string {
  const count = new Map<string, number>();
  for (const { text } of takes) count.set(text, (count.get(text) ?? 0) + 1);
  return ({ text, start }) => (count.get(text)! > 1 && start ? `${text} (${start})` : text);
}

interface Exception {
  readonly track: PartId;
  readonly text: string;
}

/** The tracks that are not as in another list, in the recorder's order: `'track 7: Lena'`. */
function exceptions(
  other: ReadonlyMap<PartId, TrackLine>,
  tracks: readonly TrackLine[],
  place: ReadonlyMap<PartId, number>,
): Exception[] {
  const here = new Set(tracks.map(({ track }) => track));
  const gone = [...other.values()].filter(({ track }) => !here.has(track));
  const said = (line: TrackLine, who: string): Exception => ({
    track: line.track,
    text: `track ${isolated(line.number)}: ${who}`,
  });
  const others = tracks.filter((line) => !isSame(other.get(line.track), line));
  return [
    ...others.map((line) => said(line, trackText(line))),
    ...gone.map((line) => said(line, 'nobody')),
  ].sort((a, b) => (place.get(a.track) ?? 0) - (place.get(b.track) ?? 0));
}

const isSame = (one: TrackLine | undefined, other: TrackLine): boolean =>
  one === other || (one !== undefined && trackKey(one) === trackKey(other));

function toldBy(name: string, but: readonly Exception[], isNew: ReadonlySet<PartId>): ListedUnit[] {
  const [first, ...rest] = but;
  if (!first) return [{ text: `as ${name}`, isNew: true }];
  return [
    { text: `as ${name} but for ${first.text}`, isNew: isNew.has(first.track) },
    ...rest.map(({ track, text }) => ({ text, isNew: isNew.has(track) })),
  ];
}
