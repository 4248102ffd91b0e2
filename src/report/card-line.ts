import type { Day, TakeId } from '../day/model.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { type CardCheck, cardCheckOf } from '../day/wrap/card-check.ts';
import { cleanLine } from './clean-text.ts';
import type { TakeLine } from './take-lines.ts';

/** The card check as the report prints it: with what its takes are called. */
export interface CardLine extends CardCheck {
  readonly without: readonly string[];
  readonly unsure: readonly string[];
  /** What each recorder's cards have, by name, with the takes that are on no other; empty on a day with one. */
  readonly has: readonly {
    readonly name: string;
    readonly takes: number;
    readonly only: readonly string[];
  }[];
}

export function cardLineOf(day: Day, lines: readonly TakeLine[]): CardLine | null {
  const check = cardCheckOf(day);
  if (!check) return null;
  const names = new Map(lines.map(({ takeId, text }) => [takeId, text]));
  const namesOf = (takes: readonly TakeId[] = []): string[] => takes.flatMap((take) => names.get(take) ?? []);
  const recorders = new Map(recordersOf(day).map(({ id, name }) => [id, cleanLine(name)]));
  const has = (check.takes?.cards ?? []).flatMap(({ recorder, takes, only }) => {
    const name = recorders.get(recorder);
    return name === undefined ? [] : [{ name, takes, only: namesOf(only) }];
  });
  return { ...check, has, without: namesOf(check.takes?.without), unsure: namesOf(check.takes?.unsure) };
}
