const MINUTES_OF_DAY = 1440;

/** The clock time where it was entered, `21:32`, whatever zone the phone is in now. */
export function clockTime(atMs: number, zone: number): string {
  const since = Math.floor(atMs / 60_000) + zone;
  const minute = ((since % MINUTES_OF_DAY) + MINUTES_OF_DAY) % MINUTES_OF_DAY;
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

const two = (value: number): string => String(value).padStart(2, '0');
