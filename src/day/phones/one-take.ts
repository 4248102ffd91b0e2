import { databaseOf } from '../../shared/ids.ts';
import { framesPerDay } from '../../time/rate.ts';
import { framesBetween, framesToMs } from '../../time/timecode.ts';
import type { Day, FactId, LineItem, Stamp, Take, TakeId } from '../model.ts';
import { startOfTake } from '../settings/settings.ts';

/** Two thumbs on Roll are some seconds apart (common practice, no source). */
const TWO_THUMBS_MS = 5000;

/**
 * Whether two takes of one slate and number can be one that two phones logged: they start together, by timecode where
 * both phones follow the recorder, else by the phones' clocks, put right as far as the phones share anything.
 */
export function canBeOneTake(day: Day, one: Take, other: Take): boolean {
  if (databaseOf(one.id) === databaseOf(other.id) || one.kind !== other.kind) return false;
  const byTimecode = apartByTimecode(startOfTake(day, one), startOfTake(day, other));
  const byClocks = apartByClocks(day, one, other);
  if (byTimecode !== null && (byClocks === null || (isTied(day, one) && isTied(day, other))))
    return byTimecode <= TWO_THUMBS_MS;
  return byClocks !== null && byClocks <= TWO_THUMBS_MS + doubtBetween(day, one, other);
}

function apartByTimecode(one: Stamp | null, other: Stamp | null): number | null {
  if (!one || !other || one.rate !== other.rate) return null;
  const apart = framesBetween(one.frames, other.frames, one.rate);
  return framesToMs(Math.min(apart, framesPerDay(one.rate) - apart), one.rate);
}

function apartByClocks({ order }: Day, one: Take, other: Take): number | null {
  if (!order || one.rolledAt === undefined || other.rolledAt === undefined) return null;
  const offsetOf = ({ id }: Take): number => order.clocks.get(databaseOf(id))?.offset ?? 0;
  return Math.abs(one.rolledAt + offsetOf(one) - other.rolledAt - offsetOf(other));
}

const doubtBetween = ({ order }: Day, ...takes: readonly Take[]): number =>
  takes.reduce((sum, { id }) => sum + (order?.clocks.get(databaseOf(id))?.doubt ?? 0), 0);

/** Whether a start is the recorder's timecode: typed, or of a phone that was tied to it. Else it is the phone's own clock. */
const isTied = (day: Day, { id, rolledAt }: Take): boolean =>
  rolledAt === undefined ||
  day.facts.some(
    (fact) =>
      fact.kind === 'clock-followed' &&
      databaseOf(fact.id) === databaseOf(id) &&
      fact.id < id &&
      !day.takenBack.has(fact.id),
  );

/** Whether a take on the line was joined into another phone's log of it: it counts no more, and nobody removed it. */
export const isJoined = (day: Day, { fact, takenBack }: LineItem): boolean =>
  fact.kind === 'take-logged' && takenBack && !day.takenBack.has(fact.id);

/** What made a take one with another phone's: two phones may have said so, each the other way round. */
export const joinsOf = (day: Day, take: TakeId): FactId[] =>
  day.facts
    .filter((fact) => fact.kind === 'takes-joined' && (fact.take === take || fact.into === take))
    .map(({ id }) => id)
    .filter((id) => !day.takenBack.has(id));
