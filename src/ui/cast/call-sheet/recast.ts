import { type Recast, withPerformersKept } from '../../../app/commands/call-sheet.ts';

/** Who plays a part, by the line of the sheet: whom the sheet names, or whom the cast has. */
export type Answered = ReadonlyMap<number, 'sheet' | 'cast'>;

/** The entries as they were answered. */
export const asAnswered = <Entry extends Recast['entry']>(
  entries: readonly Entry[],
  answered: Answered,
): Entry[] =>
  withPerformersKept(entries, new Set([...answered].flatMap(([line, who]) => (who === 'cast' ? line : []))));

/** The part whose performer is still to be said. */
export const stillAsked = (recast: readonly Recast[], answered: Answered): Recast | undefined =>
  recast.find(({ entry }) => !answered.has(entry.line));
