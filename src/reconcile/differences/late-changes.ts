import { type Answers, answersAtTake, answersFrom } from '../../day/answers/answers.ts';
import { applyWrites, linksAtTake, writesOf } from '../../day/chain/links.ts';
import type { Day, Fact, FactId, PartId, TakeId } from '../../day/model.ts';
import { placeOfTake } from '../../day/takes.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { differingTracks } from '../log-and-card/track-names.ts';

/** How many takes and changes after a take are searched for what should have come before it. */
const MOST_TAKES = 8;
const MOST_CHANGES = 40;

/**
 * The fewest changes entered after a take that, had they come before it, would have made these tracks match the
 * recording without making another track wrong. Each set is tried out on the chain; null if there is none.
 */
export function changesSaidLate(
  day: Day,
  take: TakeId,
  tracks: readonly PartId[],
  recording: Recording,
  recorder?: PartId,
): readonly FactId[] | null {
  const known = differingTracks(day, answersAtTake(day, take), recording, recorder);
  const helps = (changes: readonly Fact[]): boolean => {
    const differing = differingTracks(day, answersWith(day, take, changes), recording, recorder);
    return !tracks.some((track) => differing.has(track)) && [...differing].every((one) => known.has(one));
  };
  for (const changes of growing(day, take)) {
    if (!helps(changes)) continue;
    const needed = changes.reduce((kept, change) => {
      const without = kept.filter((one) => one !== change);
      return without.length > 0 && helps(without) ? without : kept;
    }, changes);
    return needed.map(({ id }) => id);
  }
  return null;
}

/** The changes after a take up to each later take, in growing sets. */
function* growing(day: Day, take: TakeId): Generator<readonly Fact[]> {
  const changes: Fact[] = [];
  let takes = 0;
  let isNew = false;
  for (const { fact, takenBack } of day.line.slice(placeOfTake(day, take) + 1)) {
    if (takenBack) continue;
    if (fact.kind === 'take-logged') {
      if (isNew) yield [...changes];
      isNew = false;
      takes += 1;
      if (takes === MOST_TAKES) return;
    } else if (writesOf(fact).length > 0) {
      changes.push(fact);
      isNew = true;
      if (changes.length === MOST_CHANGES) break;
    }
  }
  if (isNew) yield changes;
}

function answersWith(day: Day, take: TakeId, changes: readonly Fact[]): Answers {
  const links = new Map(linksAtTake(day, take));
  for (const change of changes) applyWrites(links, change);
  return answersFrom(day, links);
}
