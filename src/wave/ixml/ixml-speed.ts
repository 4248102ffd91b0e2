import { nearestRate, type RateId, rateOf } from '../../time/rate.ts';
import { childOf, textOf, type XmlNode } from '../xml/xml-node.ts';
import type { IXmlValues } from './ixml-values.ts';

/** SPEED (iXML 3.01): rates, and the timestamp that mirrors bext. */
export interface IXmlSpeed {
  readonly note: string | undefined;
  /** Exact frames a second: '23.98' is 24000/1001. */
  readonly timecodeRate: Fraction | undefined;
  /** The matching rate, drop-frame if the flag says so; undefined if there is none. */
  readonly rate: RateId | undefined;
  readonly dropFrame: boolean;
  readonly fileSampleRate: number | undefined;
  readonly audioBitDepth: number | undefined;
  readonly digitizerSampleRate: number | undefined;
  /** Samples since midnight. */
  readonly timestampSamples: number | undefined;
  readonly timestampSampleRate: number | undefined;
}

const TIMESTAMP = 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT';
const TIMESTAMP_MISSPELT = 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT';

/** Reads SPEED; all but NOTE are also accepted directly under the root, where some writers put them. */
export function readSpeed(root: XmlNode, values: IXmlValues): IXmlSpeed {
  const speed = childOf(root, 'SPEED');
  const either: XmlNode = { name: '', text: '', children: [...(speed?.children ?? []), ...root.children] };
  const count = (name: string): number | undefined => values.count(either, `${name}_HI`, `${name}_LO`);
  return {
    note: textOf(speed, 'NOTE'),
    ...readTimecodeRate(either, values),
    fileSampleRate: values.whole(either, 'FILE_SAMPLE_RATE'),
    audioBitDepth: values.whole(either, 'AUDIO_BIT_DEPTH'),
    digitizerSampleRate: values.whole(either, 'DIGITIZER_SAMPLE_RATE'),
    timestampSamples: count(TIMESTAMP) ?? count(TIMESTAMP_MISSPELT),
    timestampSampleRate: values.whole(either, 'TIMESTAMP_SAMPLE_RATE') || undefined,
  };
}

function readTimecodeRate(
  node: XmlNode,
  values: IXmlValues,
): Pick<IXmlSpeed, 'timecodeRate' | 'rate' | 'dropFrame'> {
  const text = textOf(node, 'TIMECODE_RATE');
  // Absent is non-drop (iXML 3.01, TIMECODE_FLAG).
  const flagged = /^D/i.test(textOf(node, 'TIMECODE_FLAG') ?? '');
  if (text === undefined) return { timecodeRate: undefined, rate: undefined, dropFrame: flagged };
  const rate = nearestRate(text, flagged);
  if (!rate) values.unknownRate('TIMECODE_RATE', text);
  return {
    timecodeRate: exactOf(text, rate),
    rate,
    dropFrame: rate ? rateOf(rate).dropped > 0 : flagged,
  };
}

/** A fraction is taken as written; a decimal is replaced by the exact rate it is near. */
function exactOf(text: string, rate: RateId | undefined): Fraction | undefined {
  if (text.includes('/') || !rate) return readFraction(text);
  const { num, den } = rateOf(rate);
  return { num, den };
}

/** An exact number `num / den`, in lowest terms, `den` above zero. */
export interface Fraction {
  readonly num: number;
  readonly den: number;
}

const WRITTEN = /^(\d{1,9})(?:[.](\d{1,6}))?(?:\s*\/\s*(\d{1,9}))?$/;

/** Reads '24000/1001', '25' or '23.976' as written; undefined for anything else, or a divisor of zero. */
export function readFraction(text: string): Fraction | undefined {
  const [, whole, decimals = '', divisor] = WRITTEN.exec(text.trim()) ?? [];
  if (whole === undefined || (divisor !== undefined && decimals !== '')) return undefined;
  const den = divisor === undefined ? 10 ** decimals.length : Number(divisor);
  return den === 0 ? undefined : reduced(Number(whole + decimals), den);
}

function reduced(num: number, den: number): Fraction {
  let [a, b] = [num, den];
  while (b !== 0) [a, b] = [b, a % b];
  return { num: num / a, den: den / a };
}
