import type { Draft } from '../../src/facts/fact.ts';
import { smallDay } from './report-day.ts';

/** The tracks of the small rig as many recorders call them: mixes L and R, and isos that count from 1. */
export const MIXES_BY_WORD: Draft = {
  kind: 'rig-laid',
  parts: [
    { part: 'tr1', fields: { name: 'L', order: 0 } },
    { part: 'trR', fields: { type: 'track', name: 'R', mix: true, tap: 'post', order: 1 } },
    ...[2, 3, 4, 5].map((n) => ({ part: `tr${n}`, fields: { name: `${n - 1}`, order: n } })),
  ],
};

/** The small day on that recorder. */
export function dayWithMixesByWord() {
  const day = smallDay();
  day.phone.say(MIXES_BY_WORD);
  return day;
}
