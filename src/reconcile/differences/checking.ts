import type { Answers } from '../../day/answers/answers.ts';
import { answersAtTake } from '../../day/answers/answers.ts';
import type { WorkingHeader } from '../../day/header.ts';
import type { Day, Take, TakeId } from '../../day/model.ts';
import { workingAtTake, workingNow } from '../../day/settings/settings.ts';
import { takesInOrder } from '../../day/takes.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { rateOfCard } from '../log-and-card/card-rate.ts';
import { type Logged, loggedTakes } from '../log-and-card/logged.ts';
import { type Recorded, recordedOf } from '../log-and-card/recorded.ts';
import type { CardMatch } from '../pairing/match-recordings.ts';
import type { Tolerance } from './difference.ts';

/** A take and its recording, with everything that is compared. */
export interface CheckedPair {
  readonly take: Take;
  readonly recording: Recording;
  readonly logged: Logged;
  readonly recorded: Recorded;
  readonly answers: Answers;
  /** What held for the take, to compute with. */
  readonly header: WorkingHeader;
}

/** The input of one check. */
export interface Checking {
  readonly day: Day;
  readonly match: CardMatch;
  readonly tolerance: Tolerance;
  /** As it is now; at the card's rate if only a newer version knows the day's. */
  readonly header: WorkingHeader;
  /** All takes of the day in order. */
  readonly takes: readonly Take[];
  readonly pairs: readonly CheckedPair[];
  /** The take after another on the line. */
  readonly nextTake: (take: TakeId) => TakeId | null;
}

export function checkingOf(day: Day, match: CardMatch, tolerance: Tolerance): Checking {
  const takes = takesInOrder(day);
  const cardRate = rateOfCard(match.recordings);
  const logged = new Map(loggedTakes(day).map((one) => [one.take.id, one]));
  const placeOf = new Map(takes.map(({ id }, at) => [id, at]));
  const pairs = match.pairs.flatMap(({ take, recording }) => {
    const one = logged.get(take);
    if (!one) return [];
    const recorded = recordedOf(recording);
    const header = workingAtTake(day, take, cardRate);
    return [{ take: one.take, recording, logged: one, recorded, answers: answersAtTake(day, take), header }];
  });
  return {
    day,
    match,
    tolerance,
    header: workingNow(day, cardRate),
    takes,
    pairs,
    nextTake: (take) => takes[(placeOf.get(take) ?? takes.length) + 1]?.id ?? null,
  };
}
