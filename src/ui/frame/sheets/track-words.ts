import type { TrackAnswer, TrackState } from '../../../day/answers/track-answers.ts';
import { trackSince } from '../../../day/answers/track-since.ts';
import type { Subject, SubjectAnswer } from '../../../day/answers/track-subject.ts';
import type { Day, TakeId } from '../../../day/model.ts';
import { takeText } from '../../../day/slate.ts';
import { breakWords, listOf, nameOf, partName, pathWords } from '../../words/chain.ts';
import { MARK_MEANS } from '../../words/means.ts';
import { nameWithRecorder } from '../../words/recorder-names.ts';

/** `before 44/3`, or nothing for now. */
export function placeWords(day: Day, before: TakeId | undefined): string {
  const take = before === undefined ? undefined : day.takes.get(before);
  return take ? `before ${takeText(take)}` : '';
}

/** A sheet about a track, which several or nobody are on: `Track 16: clash`. */
export function trackTitle({ track, state, name }: TrackAnswer): string {
  const what = state === 'clash' || state === 'gang' ? state : name || 'nobody';
  return `Track ${track.name}: ${what}`;
}

/** Who shares the track, and since which take: `Judge Havlík and Zuzu, since 44/1`. */
export function trackUnder(day: Day, { track, heard }: TrackAnswer, before: TakeId | undefined): string {
  const names = listOf([...new Set(heard.map(({ voice }) => nameOf(day, voice)))]);
  const since = heard.length > 0 ? trackSince(day, track.id, before) : undefined;
  const who = since ? `${names}, since ${takeText(since)}` : names;
  return [placeWords(day, before), who].filter(Boolean).join(' · ');
}

/** A sheet about one pack or hardline: `A1 is on Wiktoria`. */
export const subjectTitle = (day: Day, subject: Subject, stands: SubjectAnswer): string =>
  'hardline' in subject
    ? nameOf(day, subject.hardline)
    : `${partName(day.rig, subject.pack)} is on ${nameOf(day, stands.voice)}`;

/** The route to the track; or, where it does not lead to this track, where it leads instead. */
export function subjectUnder(
  day: Day,
  { track }: TrackAnswer,
  { heard, path }: SubjectAnswer,
  before: TakeId | undefined,
): string {
  const { rig } = day;
  const way = path ? pathWords(rig, path) : '';
  const elsewhere = path?.tracks.map((id) => nameWithRecorder(day, id)).join(', ');
  const end = heard
    ? `track ${track.name}`
    : elsewhere
      ? `track ${elsewhere}`
      : (path && breakWords(rig, path)) || '';
  const route = [way, end].filter(Boolean).join(' › ');
  const not = heard ? '' : `not on track ${track.name}`;
  return [placeWords(day, before), route, not].filter(Boolean).join(' · ');
}

/** Said instead of what the sheet was opened for, where the mark stands at a place at which there is none of it. */
export function notThereWords(
  day: Day,
  openedAs: TrackState,
  { track, state }: TrackAnswer,
  before: TakeId | undefined,
): string {
  if (state === openedAs || (openedAs !== 'clash' && openedAs !== 'gang')) return '';
  return `No ${openedAs} on track ${track.name} ${placeWords(day, before) || 'now'}.`;
}

/** States that a newcomer may ask about. */
export function meansOf(state: TrackState): string {
  if (state !== 'gang' && state !== 'clash' && state !== 'muted') return '';
  const { word, means } = MARK_MEANS[state];
  return `${word[0]!.toUpperCase()}${word.slice(1)}: ${means[0]!.toLowerCase()}${means.slice(1)}`;
}
