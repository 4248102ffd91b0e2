import type { Take } from '../../day/model.ts';

/** Labels beside a take: circled, NG, false start, tail slate. */
export const statusWords = (take: Take): string[] =>
  [
    take.circled && 'circled',
    take.noGood && 'NG',
    take.falseStart && 'false start',
    take.tailSlate && 'tail slate',
  ].filter((word) => word !== false);

/** How slates are read, as a choice. */
export const SLATE_STYLES = [
  { value: 'lettered', name: 'Lettered, 24B' },
  { value: 'numbered', name: 'Numbered, 118' },
] as const;
