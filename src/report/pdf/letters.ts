import type { Weight } from './paper.ts';

/** Text in one direction and one weight that the fonts of the pages cannot draw. */
export interface Run {
  readonly text: string;
  readonly weight: Weight;
  readonly isRightToLeft: boolean;
}

/** A run as a picture. Places are in ems from where its baseline begins, y upwards. */
export interface RunPicture {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** A bit a dot, rows filled up to bytes, from the top; or three bytes a dot with how opaque each is. */
  readonly dots:
    | { readonly stencil: Uint8Array }
    | { readonly colours: Uint8Array; readonly opacity: Uint8Array };
}

/**
 * The letters of the system that the pages are made on: its fonts and what shapes them. Scripts join, stack and
 * reorder letters, which the writer of pages does not.
 */
export interface SystemLetters {
  /** Whether a font of the system has the character. */
  has(character: string): boolean;
  /** How far the run goes on the baseline, in ems. */
  advance(run: Run): number;
  picture(run: Run): RunPicture;
}
