import type { Day, FactOf } from '../model.ts';
import { recordersOf } from '../recorders/rolling.ts';
import { cardCheckOf, lastCheck } from './card-check.ts';
import { dayTotals } from './day-totals.ts';

export type HandedOver = FactOf<'handed-over'>;

/** What was handed over, and to whom, in the order it was said. */
export const handOversOf = (day: Day): HandedOver[] =>
  day.facts.filter((fact): fact is HandedOver => fact.kind === 'handed-over' && !day.takenBack.has(fact.id));

/** How far the files on the cards were compared with the log. */
export interface CheckedSoFar {
  /** Nothing is left open, and no take was logged since. */
  readonly whole: boolean;
  readonly was: 'never' | 'stopped' | 'open' | 'before-last-takes' | 'whole';
  /** Differences open, or takes logged since. */
  readonly count: number;
}

export function checkedSoFar(day: Day): CheckedSoFar {
  const check = cardCheckOf(day);
  if (!check) return { whole: false, was: 'never', count: 0 };
  const { open, takes } = check;
  if (takes?.stopped) return { whole: false, was: 'stopped', count: 0 };
  if (open > 0) return { whole: false, was: 'open', count: open };
  if (takes && takes.since > 0) return { whole: false, was: 'before-last-takes', count: takes.since };
  return { whole: true, was: 'whole', count: 0 };
}

/** How many files there are and how large: as the last check of the cards counted them, or as they were logged. */
export function sizeOnCards(day: Day): {
  readonly files: number;
  readonly bytes: number;
  readonly isFromCard: boolean;
} {
  const check = lastCheck(day);
  // An earlier version did not keep how large they are.
  if (check?.bytes !== undefined) return { files: check.files, bytes: check.bytes, isFromCard: true };
  // Each recorder has a card of its own, with its own files of a take.
  const written = recordersOf(day).map(({ id }) => dayTotals(day, id).written);
  const sum = (of: 'files' | 'bytes'): number => written.reduce((all, one) => all + one[of], 0);
  return { files: sum('files'), bytes: sum('bytes'), isFromCard: false };
}

/** A card that is lost takes what is nowhere else along: two copies are common practice. */
const ENOUGH_COPIES = 2;

/** Those of which there are not enough checked copies elsewhere. */
export const withoutCopies = <Carrier extends { readonly copies?: number | undefined }>(
  carriers: readonly Carrier[],
): Carrier[] => carriers.filter(({ copies = 0 }) => copies < ENOUGH_COPIES);
