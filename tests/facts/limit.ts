import { TAKE_ID } from './example-bodies.ts';

/** Values a field takes, at the ends of what it may be, and values just beyond that it refuses. */
export interface Limit {
  readonly good: readonly unknown[];
  readonly bad: readonly unknown[];
}

export const oneOf = (good: readonly unknown[], bad: readonly unknown[]): Limit => ({
  good,
  bad: [...bad, null],
});

/** A field that may also be null. */
export const orNull = ({ good, bad }: Limit): Limit => ({
  good: [...good, null],
  bad: bad.filter((value) => value !== null),
});

export const whole = (least: number, most: number): Limit =>
  oneOf([least, most], [least - 1, most + 1, least + 0.5, String(most), Number.NaN]);

const LITTLE = 0.001;
export const amount = (least: number, most: number): Limit =>
  oneOf([least, most], [least - LITTLE, most + LITTLE, String(most), Number.POSITIVE_INFINITY]);

/** The last millisecond of the year 9999. */
export const moment = whole(0, Date.UTC(10_000, 0, 1) - 1);

export const text = (longest: number): Limit =>
  oneOf(['', 'x'.repeat(longest)], ['x'.repeat(longest + 1), 7]);

/** One of these words and of no others. */
export const words = (list: string): Limit => {
  const all = list.split(' ');
  return oneOf(all, [...all.map((word) => `${word}.`), '', 0]);
};

export const flag = oneOf([true, false], ['true', 0]);

export const idText = oneOf(['x'.repeat(64), 'Az_0.9:-'], ['', 'x'.repeat(65), 'two words', 'é', 7]);

export const factIdText = oneOf([TAKE_ID], ['take 3', '', `${TAKE_ID}0`, 7]);

/** So many hexadecimal digits, or others after a beginning. */
export const hexadecimal = (digits: number, beginning = '', others = digits): Limit =>
  oneOf(
    ['0f'.repeat(digits / 2), `${beginning}${'a9'.repeat(others / 2)}`],
    [
      '0f'.repeat(digits / 2 - 1),
      'a9'.repeat(digits / 2 + 1),
      'AF'.repeat(digits / 2),
      'xy'.repeat(digits / 2),
      7,
    ],
  );

/** So many of an item. */
export const list = (least: number, most: number, item: unknown): Limit => {
  const of = (length: number) => Array.from({ length }, () => structuredClone(item));
  return oneOf([of(least), of(most)], [...(least > 0 ? [of(least - 1)] : []), of(most + 1), {}]);
};
