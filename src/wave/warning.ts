/** What is odd or damaged in one file; reading continues in any case. */
export type WaveWarningCode =
  // the container
  | 'riff-size-differs'
  | 'ds64-missing'
  | 'ds64-short'
  | 'chunk-past-end'
  | 'chunk-repeated'
  | 'chunk-id-unreadable'
  | 'chunk-order'
  | 'chunks-too-many'
  | 'pad-byte-missing'
  | 'data-not-closed'
  | 'data-size-wrapped'
  | 'data-missing'
  | 'data-not-whole-frames'
  | 'sample-count-differs'
  | 'file-ends-early'
  | 'read-budget-spent'
  // fmt
  | 'fmt-missing'
  | 'fmt-short'
  | 'fmt-damaged'
  | 'fmt-inconsistent'
  // bext
  | 'bext-short'
  | 'bext-version-unknown'
  | 'bext-date-unreadable'
  | 'time-reference-implausible'
  | 'text-not-ascii'
  // iXML
  | 'ixml-astray'
  | 'ixml-empty'
  | 'ixml-cut'
  | 'ixml-ill-formed'
  | 'ixml-too-many-elements'
  | 'ixml-doctype-ignored'
  | 'ixml-text-not-utf8'
  | 'ixml-number-unreadable'
  | 'ixml-rate-unknown'
  | 'track-count-differs'
  | 'track-index-out-of-range'
  // one file saying two things
  | 'value-differs'
  | 'timestamp-differs'
  | 'timestamp-rate-differs'
  | 'digitizer-rate-differs'
  | 'start-past-midnight';

/** `at` is the byte position of the fault in the file, from 0. */
export interface WaveWarning {
  readonly code: WaveWarningCode;
  readonly at: number;
  readonly [detail: string]: unknown;
}

export type Warn = (warning: WaveWarning) => void;
