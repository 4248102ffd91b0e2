import type { Bext } from '../chunks/bext.ts';
import type { DescriptionLines } from '../chunks/description-lines.ts';
import type { WaveFormat } from '../chunks/fmt.ts';
import type { IXml } from '../ixml/ixml.ts';
import type { WaveContainer } from '../riff/riff.ts';

export interface WaveData {
  /** Byte position of the first sample. */
  readonly start: number;
  /** Bytes of audio in the file, and what its headers claim. */
  readonly bytes: number;
  readonly declaredBytes: number;
}

/** The chunks of one file as read. */
export interface WaveParts {
  readonly container: WaveContainer;
  readonly format: WaveFormat | undefined;
  readonly bext: Bext | undefined;
  readonly ixml: IXml | undefined;
  readonly lines: DescriptionLines | undefined;
  readonly data: WaveData | undefined;
  /** Samples per channel. */
  readonly length: number | undefined;
}
