export type AsideReason = 'note' | 'crowd' | 'other-day' | 'other-section';

/** A line that is no row and nobody: a break, a move, weather, crew, another day. */
export interface AsideLine {
  readonly line: number;
  readonly text: string;
  readonly why: AsideReason;
}
