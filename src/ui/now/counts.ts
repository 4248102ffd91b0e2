import type { Summary } from '../../day/answers/summary.ts';

const counted = (count: number, one: string, many = `${one}s`): readonly [count: number, words: string] => [
  count,
  count === 1 ? one : many,
];

/** The numbers of the summary line, each with its words. */
export const countsOf = (summary: Summary): (readonly [count: number, words: string])[] => [
  counted(summary.sources, 'source'),
  [summary.tracksUsed, `of ${summary.tracks} ${summary.tracks === 1 ? 'iso' : 'isos'}`],
  counted(summary.free, 'free', 'free'),
  counted(summary.gangs, 'gang'),
  ...(summary.muted > 0 ? [counted(summary.muted, 'muted', 'muted')] : []),
];
