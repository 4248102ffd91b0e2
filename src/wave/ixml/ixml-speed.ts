import { nearestRate, type RateId } from '../../time/rate.ts';
import { childOf, textOf, type XmlNode } from '../xml/xml-node.ts';
import type { IXmlValues } from './ixml-values.ts';

/** SPEED (iXML 3.01): rates, and the timestamp that mirrors bext. */
export interface IXmlSpeed {
  /** The rate, drop-frame if the flag says so; undefined if there is none that is known. */
  readonly rate: RateId | undefined;
  readonly fileSampleRate: number | undefined;
  readonly audioBitDepth: number | undefined;
  readonly digitizerSampleRate: number | undefined;
  /** Samples since midnight. */
  readonly timestampSamples: number | undefined;
  readonly timestampSampleRate: number | undefined;
}

const TIMESTAMP = 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT';
const TIMESTAMP_MISSPELT = 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT';

/** Reads SPEED; its elements are also accepted directly under the root, where some writers put them. */
export function readSpeed(root: XmlNode, values: IXmlValues): IXmlSpeed {
  const speed = childOf(root, 'SPEED');
  const either: XmlNode = { name: '', text: '', children: [...(speed?.children ?? []), ...root.children] };
  const count = (name: string): number | undefined => values.count(either, `${name}_HI`, `${name}_LO`);
  return {
    rate: readTimecodeRate(either, values),
    fileSampleRate: values.whole(either, 'FILE_SAMPLE_RATE'),
    audioBitDepth: values.whole(either, 'AUDIO_BIT_DEPTH'),
    digitizerSampleRate: values.whole(either, 'DIGITIZER_SAMPLE_RATE'),
    timestampSamples: count(TIMESTAMP) ?? count(TIMESTAMP_MISSPELT),
    timestampSampleRate: values.whole(either, 'TIMESTAMP_SAMPLE_RATE') || undefined,
  };
}

function readTimecodeRate(node: XmlNode, values: IXmlValues): RateId | undefined {
  const text = textOf(node, 'TIMECODE_RATE');
  if (text === undefined) return undefined;
  // Absent is non-drop (iXML 3.01, TIMECODE_FLAG).
  const rate = nearestRate(text, /^D/i.test(textOf(node, 'TIMECODE_FLAG') ?? ''));
  return rate ?? values.unknownRate('TIMECODE_RATE', text);
}
