import type { DayId } from '../facts/kinds/envelope.ts';

const listeners = new Set<(day: DayId) => void>();

/** For what is held in memory of a day besides its facts: it goes when the day is erased. */
export const onErased = (listener: (day: DayId) => void): void => void listeners.add(listener);

export function tellErased(day: DayId): void {
  for (const listener of listeners) listener(day);
}
