type NoDetail = Readonly<Record<never, never>>;

/**
 * What can go wrong with listening to timecode. Apart from `Problems`, because their sentences are in the first load
 * and listening is not; `ui/words/hearing.ts` has a sentence for each of these.
 */
export interface HearingProblems {
  'microphone-refused': NoDetail;
  'microphone-missing': NoDetail;
  'microphone-busy': NoDetail;
  'microphone-lost': NoDetail;
  'microphone-not-here': NoDetail;
  'listening-stopped': NoDetail;
  'listening-failed': { name: string };
  'heard-too-short': NoDetail;
  'heard-backwards': NoDetail;
  'heard-standing': NoDetail;
  'heard-rate-unclear': NoDetail;
  'heard-rates-differ': { rates: readonly [string, string] };
  'heard-too-soon': NoDetail;
}

export type HearingCode = keyof HearingProblems;
export type HearingProblemOf<Code extends HearingCode> = Code extends HearingCode
  ? { readonly code: Code } & Readonly<HearingProblems[Code]>
  : never;
export type HearingProblem = HearingProblemOf<HearingCode>;
