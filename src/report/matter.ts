import type { TakeId } from '../day/model.ts';
import type { TakeLine } from './take-lines.ts';

/** An open matter of the day. `takes` are where it shows, `names` what those are called. */
export interface Matter {
  readonly code: string;
  readonly takes?: readonly TakeId[];
  readonly names?: readonly string[];
  readonly [detail: string]: unknown;
}

/** Where a matter shows. */
export const at = (lines: readonly TakeLine[]) => ({
  takes: lines.map(({ takeId }) => takeId),
  names: lines.map(({ text }) => text),
});
