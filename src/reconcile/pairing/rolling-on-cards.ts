import type { Day, PartId, TakeId } from '../../day/model.ts';
import { isOnRecorder, rollingAtTake } from '../../day/recorders/rolling.ts';
import type { CardOfRecorder } from './match-recorders.ts';

/** Takes of which a recorder's card says otherwise than the log whether it rolled, though another card has them. */
export interface RolledOtherwise {
  readonly recorder: PartId;
  /** Whether they are on the card; the log says the opposite. */
  readonly isOn: boolean;
  readonly takes: readonly TakeId[];
}

/** What a card has of the day's takes. */
export interface HasOfTakes {
  readonly recorder: PartId;
  readonly takes: number;
  /** Those that no other card has, though the take is on another recorder too, by the log. */
  readonly only: readonly TakeId[];
}

const takesOn = ({ pairs, questions }: CardOfRecorder): ReadonlySet<TakeId> =>
  new Set([...pairs, ...questions].map(({ take }) => take));

/** Where the cards say otherwise which recorders rolled: a take must be on some card, or it is simply missing. */
export function rolledOtherwise(
  day: Day,
  takes: readonly TakeId[],
  cards: readonly CardOfRecorder[],
): RolledOtherwise[] {
  const has = cards.map((card) => ({ recorder: card.recorder, on: takesOn(card) }));
  const isOnAny = (take: TakeId): boolean => has.some(({ on }) => on.has(take));
  return has.flatMap(({ recorder, on }) =>
    [true, false].flatMap((isOn): RolledOtherwise[] => {
      const differing = takes.filter(
        (take) => isOnAny(take) && on.has(take) === isOn && isOnRecorder(day, take, recorder) !== isOn,
      );
      return differing.length > 0 ? [{ recorder, isOn, takes: differing }] : [];
    }),
  );
}

export const hasOfTakes = (day: Day, cards: readonly CardOfRecorder[]): HasOfTakes[] =>
  cards.map((card) => {
    const on = takesOn(card);
    const others = cards.filter((one) => one !== card).map(takesOn);
    const isOnly = (take: TakeId): boolean =>
      others.every((other) => !other.has(take)) &&
      rollingAtTake(day, take).some(({ id }) => id !== card.recorder);
    return { recorder: card.recorder, takes: on.size, only: [...on].filter(isOnly) };
  });
