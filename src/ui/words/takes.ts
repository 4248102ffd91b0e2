import type { Take, Unit } from '../../day/model.ts';
import { wordIn } from '../../shared/open-word.ts';

export const UNIT_WORD: Record<Unit, string> = { main: 'main', second: 'second', splinter: 'splinter' };

/** Labels beside a take: circled, NG, false start, tail slate. */
export const statusWords = (take: Take): string[] =>
  [
    take.circled && 'circled',
    take.noGood && 'NG',
    take.falseStart && 'false start',
    take.tailSlate && 'tail slate',
    take.unit !== undefined && take.unit !== 'main' && `${wordIn(UNIT_WORD, take.unit)} unit`,
  ].filter((word) => word !== false);

/** How slates are read, as a choice. */
export const SLATE_STYLES = [
  { value: 'lettered', name: 'Lettered, 24B' },
  { value: 'numbered', name: 'Numbered, 118' },
] as const;
