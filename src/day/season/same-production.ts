import type { Header } from '../model.ts';

/** Of a day, what says which production it is of and when it was. */
export interface DayOfProduction {
  readonly id: string;
  readonly production: string;
  readonly date: string;
  readonly sample: boolean;
  readonly lastAt: number;
}

/** The date of a day; one without a date is of the date when something was last said. */
export const dateOfDay = (date: string, lastAt: number): string =>
  date || new Date(lastAt).toISOString().slice(0, 10);

/** Whether two heads name one production. Days of none have nothing in common, nor has practice with work. */
export const isOneProduction = (
  a: Pick<Header, 'production' | 'sample'>,
  b: Pick<Header, 'production' | 'sample'>,
): boolean =>
  plain(a.production) !== '' && plain(a.production) === plain(b.production) && a.sample === b.sample;

const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

/** The days of a production before one of its days. */
export const daysBefore = <One extends DayOfProduction>(days: readonly One[], day: DayOfProduction): One[] =>
  days.filter(
    (one) =>
      one.id !== day.id &&
      isOneProduction(one, day) &&
      dateOfDay(one.date, one.lastAt) < dateOfDay(day.date, day.lastAt),
  );
