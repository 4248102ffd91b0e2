import type { Revision } from './revision.ts';

/** What a report may carry beside the day itself. */
export interface Extras {
  /** Absent on the first report that goes out. */
  readonly revision?: Revision | undefined;
  /** A line under the report, in the mixer's words. */
  readonly signature?: string | undefined;
}
