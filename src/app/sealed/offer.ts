import type { Series } from '../../exchange/codes/series.ts';

/** What this phone has for another. */
export interface Offer {
  /** The other phone's database; null if it did not say. */
  readonly to: string | null;
  readonly entries: number;
  /** Of a shared day: only phones that have joined can read it. */
  readonly isSealed?: boolean;
  /** Why what was entered on this phone is not in it; missing where it is. */
  readonly leavesOut?: 'not-admitted' | 'lacks-key' | undefined;
  /** Null if the other phone has everything that is here. */
  readonly series: Series | null;
}
