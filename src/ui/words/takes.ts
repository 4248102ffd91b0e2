import type { Take } from '../../day/model.ts';

/** What stands beside a take: circled, NG, false start, tail slate. */
export const statusWords = (take: Take): string[] =>
  [
    take.circled && 'circled',
    take.noGood && 'NG',
    take.falseStart && 'false start',
    take.tailSlate && 'tail slate',
  ].filter((word) => word !== false);
