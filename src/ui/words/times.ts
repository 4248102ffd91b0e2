import { lightFormat } from 'date-fns/lightFormat';

/** A clock time where it was said, `21:32`, whatever zone the phone is in now. */
export function clockTime(atMs: number, zone: number): string {
  const there = new Date(atMs + zone * 60_000);
  return lightFormat(new Date(there.getTime() + there.getTimezoneOffset() * 60_000), 'HH:mm');
}

/** Elapsed time of an open take, `0:42`. */
export function elapsed(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
