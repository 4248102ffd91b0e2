import { formatSeconds } from '../../time/length.ts';

/** `'1 take'`, `'2 takes'`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Decimal units, as cards are sold: `'1.44 MB'`, `'12.3 GB'`. */
export function bytesText(bytes: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB'];
  // By the printed digits: 999 999 bytes round to a thousand kB, which is 1.00 MB.
  const printed = Number(Math.max(1, bytes).toPrecision(3));
  const unit = Math.min(units.length - 1, Math.floor(Math.log10(printed) / 3));
  const value = bytes / 1000 ** unit;
  return `${unit === 0 ? value : value.toPrecision(3)} ${units[unit]}`;
}

/** `'0:07'`, `'1:02:10'`, to the nearest second. */
export const durationText = (ms: number): string => formatSeconds(Math.round(ms / 1000));
