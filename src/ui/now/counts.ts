import type { Summary } from '../../day/answers/summary.ts';

const counted = (count: number, one: string, many = `${one}s`): readonly [count: number, words: string] => [
  count,
  count === 1 ? one : many,
];

/** The numbers of the summary line, each with its words; few where there is little room. */
export const countsOf = (summary: Summary, isFew = false): (readonly [count: number, words: string])[] => [
  ...(isFew ? [] : [counted(summary.sources, 'source')]),
  [summary.tracksUsed, `of ${summary.tracks} ${summary.tracks === 1 ? 'iso' : 'isos'}`],
  counted(summary.free, 'free', 'free'),
  ...(isFew ? [] : [counted(summary.gangs, 'gang')]),
  ...(summary.muted > 0 && !isFew ? [counted(summary.muted, 'muted', 'muted')] : []),
];
