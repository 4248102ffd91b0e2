import type { Take, TakeId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';

/** Takes in a row that are shown at once. */
export const SHOWN = 3;

export interface StripTake {
  readonly take: Take;
  /** Takes are left out between this and the one shown before it. */
  readonly leftOut: boolean;
}

export interface Strip {
  readonly shown: readonly StripTake[];
  /** Takes are left out between the last one shown and now. */
  readonly leftOutAtEnd: boolean;
  readonly hasEarlier: boolean;
  readonly hasLater: boolean;
}

/** The first take shown when a strip opens: its mark among them, or else the last ones. */
export function firstShown(takes: readonly Take[], before: TakeId | undefined): number {
  const mark = takes.findIndex(({ id }) => id === before);
  const last = Math.max(0, takes.length - SHOWN);
  return mark < 0 ? last : Math.min(mark, last);
}

/** Some takes of the line from `first` on. The mark's take is always among them, wherever it stands. */
export function stripOf(takes: readonly Take[], first: number, before: TakeId | undefined): Strip {
  const mark = takes.findIndex(({ id }) => id === before);
  const isOutside = mark >= 0 && (mark < first || mark >= first + SHOWN);
  // The mark takes the place of the take farthest from it.
  const [from, to] = isOutside
    ? mark < first
      ? [first + 1, first + SHOWN]
      : [first, first + SHOWN - 1]
    : [first, first + SHOWN];
  const places = takes.map((_, at) => at).filter((at) => at === mark || (at >= from && at < to));
  return {
    shown: places.map((at, n) => ({ take: takes[at]!, leftOut: n > 0 && places[n - 1] !== at - 1 })),
    leftOutAtEnd: places.at(-1) !== takes.length - 1,
    hasEarlier: first > 0,
    hasLater: first + SHOWN < takes.length,
  };
}

/** `first`, so many takes on or back, as far as there are any. */
export const turned = (takes: readonly Take[], first: number, by: number): number =>
  Math.max(0, Math.min(takes.length - SHOWN, first + by));

/** Where the mark stands: `before 44/3`, `now, after 45B/2`. */
export function markWords(takes: readonly Take[], before: TakeId | undefined): string {
  const take = takes.find(({ id }) => id === before);
  return take ? `before ${takeText(take)}` : `now, after ${takeText(takes.at(-1)!)}`;
}
