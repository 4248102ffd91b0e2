import type { Day, TakeId } from '../day/model.ts';
import { type CardCheck, cardCheckOf } from '../day/wrap/card-check.ts';
import type { TakeLine } from './take-lines.ts';

/** The card check as the report prints it: with what its takes are called. */
export interface CardLine extends CardCheck {
  readonly without: readonly string[];
  readonly unsure: readonly string[];
}

export function cardLineOf(day: Day, lines: readonly TakeLine[]): CardLine | null {
  const check = cardCheckOf(day);
  if (!check) return null;
  const names = new Map(lines.map(({ takeId, text }) => [takeId, text]));
  const namesOf = (takes: readonly TakeId[] = []): string[] => takes.flatMap((take) => names.get(take) ?? []);
  return { ...check, without: namesOf(check.takes?.without), unsure: namesOf(check.takes?.unsure) };
}
