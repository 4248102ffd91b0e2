import type { WorkingHeader } from '../../day/header.ts';
import type { Day, PartId, Take, TakeId } from '../../day/model.ts';
import { workingAtTake, workingNow } from '../../day/settings/settings.ts';
import { takesInOrder } from '../../day/takes.ts';
import { rateOfCard } from '../log-and-card/card-rate.ts';
import { loggedTakes } from '../log-and-card/logged.ts';
import { recordedOf } from '../log-and-card/recorded.ts';
import type { CardMatch } from '../pairing/match-recordings.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Tolerance } from './difference.ts';
import { type PreRecord, undeclaredPreRecord, withPreRecord } from './pre-record.ts';

/** The input of one check. */
export interface Checking {
  readonly day: Day;
  readonly match: CardMatch;
  /** Whose cards these are; the main one's of each take on a day with one recorder. */
  readonly recorder: PartId | undefined;
  readonly tolerance: Tolerance;
  /** As it is now; at the card's rate if only a newer version knows the day's. */
  readonly header: WorkingHeader;
  /** All takes of the day in order. */
  readonly takes: readonly Take[];
  /** With the pre-record that the files do not declare. */
  readonly pairs: readonly CheckedPair[];
  readonly preRecord: PreRecord | null;
  /** The take after another on the line. */
  readonly nextTake: (take: TakeId) => TakeId | null;
}

export function checkingOf(day: Day, match: CardMatch, tolerance: Tolerance, recorder?: PartId): Checking {
  const takes = takesInOrder(day);
  const cardRate = rateOfCard(match.recordings);
  const logged = new Map(loggedTakes(day, recorder).map((one) => [one.take.id, one]));
  const placeOf = new Map(takes.map(({ id }, at) => [id, at]));
  const found = match.pairs.flatMap(({ take, recording }) => {
    const one = logged.get(take);
    if (!one) return [];
    const recorded = recordedOf(recording);
    const header = workingAtTake(day, take, cardRate, recorder);
    return [{ take: one.take, recording, logged: one, recorded, answers: one.answers, header }];
  });
  const preRecord = undeclaredPreRecord(found, match.axis.dayMs);
  return {
    day,
    match,
    tolerance,
    recorder,
    header: workingNow(day, cardRate, recorder),
    takes,
    pairs: withPreRecord(found, preRecord),
    preRecord,
    nextTake: (take) => takes[(placeOf.get(take) ?? takes.length) + 1]?.id ?? null,
  };
}
