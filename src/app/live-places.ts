import type { DayId } from '../facts/kinds/envelope.ts';

/** Where a day's log is, on the host that serves the app. */
export interface LogPlace {
  /** Begins with a slash. */
  readonly path: string;
  readonly user: string;
  readonly password: string;
}

/** Which days of this phone are live, and where. */
export interface LivePlaces {
  of(day: DayId): LogPlace | undefined;
  /** Undefined: the day is live no more. */
  keep(day: DayId, place: LogPlace | undefined): void;
}

const KEY = 'rollbook-live';

/** `storage` is missing where the browser refuses it: then it holds for this window only. */
export function livePlaces(storage: Storage | undefined): LivePlaces {
  let places: Record<DayId, LogPlace | undefined> = {};
  const read = (): void => {
    try {
      places = JSON.parse(storage?.getItem(KEY) ?? '{}') as typeof places;
    } catch {
      // Not kept by this app.
    }
  };
  read();
  return {
    of: (day) => places[day],
    keep(day, place) {
      // Another window may have put another day live.
      if (storage) read();
      places[day] = place;
      try {
        storage?.setItem(KEY, JSON.stringify(places));
      } catch {
        // A full phone.
      }
    },
  };
}
