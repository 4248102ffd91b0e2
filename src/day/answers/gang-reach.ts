import { gangName, gangsOn } from '../chain/gang-links.ts';
import type { Day, Fact, PartId, Take, TakeId } from '../model.ts';
import { itemOnLine, placeOfTake, takesInOrder } from '../takes.ts';
import { type Answers, answersAtTake, answersNow } from './answers.ts';
import { isTrackRolled } from './rolled-parts.ts';
import { audibleOn, gangFor, type TrackAnswer } from './track-answers.ts';

// What declaring or ending a gang before a past take does to that take and those after it: computed before
// anything is recorded.

/** How long a track stays as it is before a take. */
export interface Stretch {
  /** The takes it lasts for, in a row. */
  readonly takes: readonly Take[];
  /** The take before which it changes; `end` if it changes after the last take, null if it still lasts. */
  readonly until: TakeId | 'end' | null;
  /** Later takes with a clash that a continuing gang of the same sources would also end. */
  readonly alike: readonly Take[];
}

/** The takes from here on during which a track is used just as it is now. */
export function stretchOf(day: Day, track: PartId, before: TakeId): Stretch {
  const later = takesFrom(day, track, before);
  const answers = later.map(({ id }) => onTrack(answersAtTake(day, id).tracks, track));
  const sources = (answers[0]?.heard ?? []).map(({ source }) => source.id);
  const ended = endOfGang(day, track, sources, placeOfTake(day, before));
  const heldAt = later.filter(({ id }) => placeOfTake(day, id) < ended).length;
  const changes = answers.findIndex((answer) => useOfTrack(answer) !== useOfTrack(answers[0]));
  const count = Math.min(heldAt, changes < 0 ? later.length : changes);
  const isStill =
    useOfTrack(onTrack(answersNow(day).tracks, track)) === useOfTrack(answers[0]) &&
    ended === day.line.length;
  return {
    takes: later.slice(0, count),
    until: later[count]?.id ?? (isStill ? null : 'end'),
    alike: later.slice(count, heldAt).filter((_, at) => {
      const answer = answers[count + at]!;
      return answer.state === 'clash' && audibleOn(answer).every(({ source }) => sources.includes(source.id));
    }),
  };
}

/** Whether a gang of exactly these sources holds just before a take, or at the end of the line. */
export function isGangAt(day: Day, at: TakeId | 'end', track: PartId, sources: readonly string[]): boolean {
  const { links } = at === 'end' ? answersNow(day) : answersAtTake(day, at);
  return links.get(gangName(track, sources))?.value === true;
}

/** The takes that would clash if every gang of a track ended here; gangs declared later still hold. */
export function clashesWithoutGang(day: Day, track: PartId, before: TakeId): Take[] {
  const from = placeOfTake(day, before);
  const known = new Map<Answers, boolean>();
  const wouldClash = (answers: Answers): boolean => {
    const answer = onTrack(answers.tracks, track);
    if (answer?.state !== 'gang') return false;
    const left = gangsOn(answers.links, track).filter(({ by }) => (itemOnLine(day, by)?.place ?? 0) >= from);
    return gangFor(left, audibleOn(answer)) === undefined;
  };
  return takesFrom(day, track, before).filter(({ id }) => {
    // Takes that share all answers share the gangs behind them, which those that share one need not.
    const answers = answersAtTake(day, id);
    const clashes = known.get(answers) ?? wouldClash(answers);
    known.set(answers, clashes);
    return clashes;
  });
}

const onTrack = (tracks: readonly TrackAnswer[], id: PartId): TrackAnswer | undefined =>
  tracks.find(({ track }) => track.id === id);

/** A track's use is unchanged while the same voices come in by the same sources, ganged or not. */
export const useOfTrack = (answer: TrackAnswer | undefined): string =>
  JSON.stringify([
    answer?.state,
    ...(answer ? audibleOn(answer) : []).map(({ source, voice }) => [source.id, voice]),
  ]);

/** The takes from here on that a track is recorded at: what its recorder hears meanwhile is on no take. */
const takesFrom = (day: Day, track: PartId, before: TakeId): Take[] =>
  takesInOrder(day).filter(
    ({ id }) =>
      placeOfTake(day, id) >= placeOfTake(day, before) && isTrackRolled(answersAtTake(day, id), track),
  );

/** Where existing facts end a gang declared here; the end of the line if nothing does. */
function endOfGang(day: Day, track: PartId, sources: readonly string[], from: number): number {
  const name = gangName(track, sources);
  const ends = (fact: Fact): boolean =>
    (fact.kind === 'gang-declared' && fact.track === track && fact.sources.length === 0) ||
    (fact.kind === 'gang-ended' && gangName(fact.track, fact.sources) === name);
  const at = day.line.findIndex(({ fact, takenBack, place }) => place >= from && !takenBack && ends(fact));
  return at < 0 ? day.line.length : at;
}
