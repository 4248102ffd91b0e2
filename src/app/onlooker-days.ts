import type { DayId } from '../facts/kinds/envelope.ts';

/** The days that this phone joined to look on: it reads them and writes nothing. */
export interface OnlookerDays {
  has(day: DayId): boolean;
  /** False once it may write, or the day is erased. */
  keep(day: DayId, looksOn: boolean): void;
}

const KEY = 'rollbook-looks-on';

/** `storage` is missing where the browser refuses it: then it holds for this window only. */
export function onlookerDays(storage: Storage | undefined): OnlookerDays {
  let kept = '';
  const read = (): string[] => (storage?.getItem(KEY) ?? kept).split(' ').filter((day) => day !== '');
  return {
    has: (day) => read().includes(day),
    keep(day, looksOn) {
      kept = [...read().filter((other) => other !== day), ...(looksOn ? [day] : [])].join(' ');
      try {
        storage?.setItem(KEY, kept);
      } catch {
        // A full phone: what others admit is theirs to judge, whatever this phone believes of itself.
      }
    },
  };
}
