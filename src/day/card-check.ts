import type { DifferenceKey } from './card-settlement.ts';
import type { Day, FactId, FactOf } from './model.ts';

/** The last time the card was laid beside the log. */
export interface CardCheck {
  readonly by: FactId;
  /** UTC ms when it was said. */
  readonly atMs: number;
  readonly files: number;
  readonly recordings: number;
  /** Differences nobody had settled then. */
  readonly open: number;
  /** Differences where the log was kept. */
  readonly kept: number;
}

/** What the report may say of the card: null while it was never checked, or the check was taken back. */
export function cardCheckOf(day: Day): CardCheck | null {
  const check = day.facts.findLast(
    (fact): fact is FactOf<'card-checked'> => fact.kind === 'card-checked' && !day.takenBack.has(fact.id),
  );
  if (!check) return null;
  const { id: by, at: atMs, files, recordings, open } = check;
  return { by, atMs, files, recordings, open, kept: keptDifferences(day).size };
}

/** The differences in which the log was kept, each as `differenceName` writes it, with the fact that said so. */
export function keptDifferences(day: Day): ReadonlyMap<string, FactId> {
  const kept = new Map<string, FactId>();
  for (const fact of day.facts) {
    if (fact.kind === 'difference-kept' && !day.takenBack.has(fact.id))
      kept.set(differenceName(fact), fact.id);
  }
  return kept;
}

/** One text for one difference: `'["length-differs","","24BT3.wav",""]'`. */
export const differenceName = ({ code, take = '', file = '', track = '' }: DifferenceKey): string =>
  JSON.stringify([code, take, file, track]);
