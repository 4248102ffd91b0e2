import type { Open, Take, Unit } from '../../day/model.ts';
import { wordIn } from '../../shared/open-word.ts';

export const UNIT_WORD: Record<Unit, string> = { main: 'main', second: 'second', splinter: 'splinter' };

/** Labels beside a take: circled, NG, false start, tail slate; its units, but for the main one alone. */
export const statusWords = (take: Take, units: readonly Open<Unit>[] = [take.unit ?? 'main']): string[] =>
  [
    take.circled && 'circled',
    take.noGood && 'NG',
    take.falseStart && 'false start',
    take.tailSlate && 'tail slate',
    ...(units.join() === 'main' ? [] : units.map((unit) => `${wordIn(UNIT_WORD, unit)} unit`)),
  ].filter((word) => word !== false);

/** How slates are read, as a choice. */
export const SLATE_STYLES = [
  { value: 'lettered', name: 'Lettered, 24B' },
  { value: 'numbered', name: 'Numbered, 118' },
] as const;
