import type { PartId, Stamp, TakeId } from '../../day/model.ts';
import type { CardSettlement, DifferenceKey } from '../../day/wrap/card-settlement.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { WaveWarningCode } from '../../wave/warning.ts';
import type { Choice } from '../pairing/match-recordings.ts';

/** How much a difference matters, worst first: sound missing or unknown; a wrong line; an oddity. */
export const SEVERITIES = ['lost', 'wrong', 'odd'] as const;
export type Severity = (typeof SEVERITIES)[number];

/**
 * Every kind of difference and its severity; of several in one place with the same severity, the first one
 * here leads.
 */
export const SEVERITY_OF = {
  // A take and its recording
  'take-not-recorded': 'lost',
  'match-unsure': 'lost',
  'recording-not-logged': 'lost',
  'mos-recorded': 'lost',
  'track-not-recorded': 'lost',
  'file-set-incomplete': 'lost',
  'slate-differs': 'wrong',
  'take-number-differs': 'wrong',
  'track-name-differs': 'wrong',
  'start-differs': 'wrong',
  'length-differs': 'wrong',
  'roll-differs': 'wrong',
  'circled-differs': 'wrong',
  'take-type-differs': 'wrong',
  'file-name-differs': 'wrong',
  'start-not-logged': 'odd',
  'length-not-logged': 'odd',
  'note-not-logged': 'odd',
  // The day and the whole card
  pulldown: 'wrong',
  'sample-rate-differs': 'wrong',
  'bit-depth-differs': 'wrong',
  'timecode-rate-differs': 'wrong',
  'file-layout-differs': 'wrong',
  'file-names-differ': 'wrong',
  'clock-apart': 'wrong',
  'clock-drifts': 'odd',
  'recordings-of-another-day': 'odd',
  // Between recordings and within files
  'recordings-overlap': 'wrong',
  'recordings-gap': 'wrong',
  'parts-gap': 'wrong',
  'parts-overlap': 'wrong',
  'file-damaged': 'lost',
  'file-warning': 'odd',
  'files-disagree': 'odd',
  'file-twice': 'odd',
} as const satisfies Record<string, Severity>;
export type DifferenceCode = keyof typeof SEVERITY_OF;

/** Warnings that may mean missing sound; all others are only odd. */
export const DAMAGE: ReadonlySet<WaveWarningCode> = new Set<WaveWarningCode>([
  'chunk-past-end',
  'data-not-closed',
  'data-size-wrapped',
  'data-missing',
  'file-ends-early',
  'fmt-missing',
  'fmt-damaged',
]);

/** A value of the log or of a file, as written; null if there is none. */
export type DifferenceValue = string | number | boolean | Stamp | readonly string[] | null;

/** One difference between log and card. */
export interface Difference extends Omit<DifferenceKey, 'code'> {
  readonly code: DifferenceCode;
  readonly severity: Severity;
  readonly recording?: Recording | undefined;
  /** What the log says or what was expected, and what the card says. */
  readonly was: DifferenceValue;
  readonly is: DifferenceValue;
  /** Other data for the sentence: counts, frames, warnings. */
  readonly detail: Readonly<Record<string, unknown>>;
  /** For `match-unsure`: the recordings the take may have. */
  readonly choices?: readonly Choice[] | undefined;
  readonly settlements: readonly CardSettlement[];
  /** Resolved by keeping the log, so no longer open. */
  readonly kept: boolean;
}

/** A difference before it is known whether it was resolved. */
export interface Found {
  readonly code: DifferenceCode;
  readonly take?: TakeId | undefined;
  readonly track?: PartId | undefined;
  readonly recording?: Recording | undefined;
  readonly was: DifferenceValue;
  readonly is: DifferenceValue;
  readonly detail?: Readonly<Record<string, unknown>>;
  readonly choices?: readonly Choice[];
  /** Distinguishes differences with the same code, take, file and track: which warning, which field. */
  readonly aspect?: string | undefined;
  /** Ways to resolve it besides keeping the log. */
  readonly settlements?: readonly CardSettlement[];
}

/** How far start and length may differ, in frames at the day's rate. */
export interface Tolerance {
  readonly startFrames: number;
  readonly lengthFrames: number;
}

/** Two seconds at 25, for two hands on two buttons (common practice, no source). */
export const DEFAULT_TOLERANCE: Tolerance = { startFrames: 50, lengthFrames: 50 };

/** The differences not resolved yet. */
export const openDifferences = (differences: readonly Difference[]): Difference[] =>
  differences.filter(({ kept }) => !kept);
