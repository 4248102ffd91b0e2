import type { PartId, Stamp, TakeId } from '../../day/model.ts';
import type { CardSettlement, DifferenceKey, SettlementChoice } from '../../day/wrap/card-settlement.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { WaveWarning, WaveWarningCode } from '../../wave/warning.ts';
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
  'tracks-swapped': 'wrong',
  'track-name-differs': 'wrong',
  'start-differs': 'wrong',
  'length-differs': 'wrong',
  'roll-differs': 'wrong',
  'rolling-differs': 'wrong',
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
  'pre-record-undeclared': 'odd',
  'take-on-backup-only': 'odd',
  'recordings-of-another-day': 'odd',
  'recordings-of-another-unit': 'odd',
  'field-never-changes': 'odd',
  // Between recordings and within files
  'recordings-overlap': 'wrong',
  'recordings-gap': 'wrong',
  'parts-gap': 'wrong',
  'parts-overlap': 'wrong',
  'file-damaged': 'lost',
  'file-warning': 'odd',
  'files-disagree': 'odd',
  'file-twice': 'odd',
} as const satisfies Record<DifferenceCode, Severity>;

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

/** What a difference is about, besides what log and card say. */
interface OfTake {
  readonly take: TakeId;
}
interface OfFile {
  readonly recording: Recording;
}
type OfPair = OfTake & OfFile;

/** What the log says or what was expected, and what the card says. */
interface Sides<Was, Is = Was> {
  readonly was: Was;
  readonly is: Is;
}

/** Facts for the sentence. */
interface Detail<Said> {
  readonly detail: Said;
}

/** The takes a difference is about, in order. */
interface Takes {
  readonly takes: readonly TakeId[];
}

type OfDay = Sides<string | number> & Detail<{ readonly count: number }>;

/** What every kind of difference holds. */
interface Shapes {
  'take-not-recorded': OfTake & Sides<string, null>;
  'take-on-backup-only': OfTake & Sides<string, readonly string[]>;
  'match-unsure': OfTake & Sides<string, readonly string[]> & { readonly choices: readonly Choice[] };
  'recording-not-logged': OfFile & Sides<null, string>;
  'mos-recorded': OfPair & Sides<string>;
  'track-not-recorded': OfPair & OfTrack & Sides<string, null>;
  'file-set-incomplete': OfFile & Sides<number>;
  'slate-differs': OfPair & Sides<string>;
  'take-number-differs': OfPair & Sides<number>;
  'track-name-differs': OfPair & OfTrack & Sides<string>;
  'tracks-swapped': OfPair & OfTrack & Sides<string> & Detail<{ readonly others: readonly string[] }>;
  'start-differs': OfPair & Sides<Stamp | null> & Detail<{ readonly frames: number }>;
  'length-differs': OfPair & Sides<Stamp | null> & Detail<{ readonly frames: number }>;
  'roll-differs': OfPair & Sides<string> & Detail<Takes>;
  /** Whether a recorder rolled on these takes. */
  'rolling-differs': Sides<boolean> & Detail<Takes> & { readonly recorder: PartId };
  'circled-differs': OfPair & Sides<boolean>;
  'take-type-differs': OfPair & Sides<readonly string[]>;
  'file-name-differs': OfPair & Sides<string>;
  'start-not-logged': OfPair & Sides<null, Stamp>;
  'length-not-logged': OfPair & Sides<null, Stamp>;
  'note-not-logged': OfPair & Sides<readonly string[], string>;
  pulldown: Sides<string> & Detail<PulldownSaid>;
  'sample-rate-differs': OfDay;
  'bit-depth-differs': OfDay;
  'timecode-rate-differs': OfDay;
  'file-layout-differs': OfDay;
  'file-names-differ': Sides<string> & Detail<Takes & { readonly count: number }>;
  'clock-apart': Sides<number> & Detail<ClockSaid & Takes>;
  'clock-drifts': Sides<number> & Detail<ClockSaid>;
  'pre-record-undeclared': Sides<number> & Detail<Takes>;
  'recordings-of-another-day': Sides<string, readonly string[]> & Detail<{ readonly count: number }>;
  'recordings-of-another-unit': Sides<null, readonly string[]> & Detail<{ readonly count: number }>;
  'field-never-changes': Sides<readonly string[], string> &
    Detail<{ readonly field: 'scene' | 'take' | 'roll'; readonly count: number }>;
  'recordings-overlap': OfFile & Sides<string> & Detail<{ readonly ms: number }>;
  'recordings-gap': OfFile & Sides<string> & Detail<{ readonly ms: number }>;
  'parts-gap': OfFile & Sides<number>;
  'parts-overlap': OfFile & Sides<number>;
  'file-damaged': OfFile & Sides<string> & Detail<Warned>;
  'file-warning': OfFile & Sides<string> & Detail<Warned>;
  'files-disagree': OfFile & Sides<string, readonly string[]>;
  'file-twice': OfFile & Sides<string, readonly string[]>;
}

/** A track over several takes in a row, and its label. */
type OfTrack = { readonly track: PartId } & Detail<Takes & { readonly number: string }>;

interface Warned {
  readonly warning: WaveWarning;
  readonly count: number;
}

/** How two clocks compare. */
export interface ClockSaid {
  /** From the phone's own times of Roll, or from the starts in the log if too few takes have one. */
  readonly by: 'phone' | 'log';
  /** How much faster the recorder runs. 0 unless it is certainly different. */
  readonly ppm: number;
  readonly framesPerHour: number;
}

/** Where times differ by 1001/1000, and by how much. */
interface PulldownSaid {
  readonly by: 'starts' | 'lengths';
  readonly ppm: number;
}

export type DifferenceCode = keyof Shapes;

/** Where a difference belongs. */
interface Place {
  readonly take?: TakeId | undefined;
  readonly track?: PartId | undefined;
  /** Whose cards it is about, if the day has several recorders. */
  readonly recorder?: PartId | undefined;
  readonly recording?: Recording | undefined;
}

type With<More> = {
  [Code in DifferenceCode]: { readonly code: Code } & Place & Shapes[Code] & More;
}[DifferenceCode];

/** A difference before it is known whether it was settled. */
export type Found = With<{
  /** Distinguishes differences with the same code, take, file and track: which warning, which field. */
  readonly aspect?: string | undefined;
  /** Ways to settle it besides keeping the log. */
  readonly settlements?: readonly SettlementChoice[];
}>;

/** One difference between log and card. */
export type Difference = With<{
  readonly severity: Severity;
  readonly key: DifferenceKey;
  readonly settlements: readonly CardSettlement[];
  /** Settled by keeping the log, so no longer open. */
  readonly kept: boolean;
}>;

/** A value of the log or of a file, as written; null if there is none. */
export type DifferenceValue = Difference['was'] | Difference['is'];

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
