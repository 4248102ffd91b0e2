import type { WorkingHeader } from '../../day/header.ts';
import type { Slate, Stamp, TakeKind, TakeSlate } from '../../day/model.ts';
import { parseSlate } from '../../day/slate.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { RateId } from '../../time/rate.ts';
import { samplesToFrames } from '../../time/samples.ts';
import { startAtRate } from '../../wave/file/wave-start.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { SERIES } from './logged.ts';
import { cutText, slateKey, takeNumber } from './plain-key.ts';
import { recordingName } from './recorded.ts';

type Style = Slate['style'];

/**
 * What a file's scene means: a kind with its own numbering, or a slate. A scene has no room for both parts of
 * a numbered slate, so the missing part is taken from the slate it `was`.
 */
export function slateOfFile(
  scene: string,
  style: Style,
  was?: TakeSlate,
): { kind?: TakeKind; slate?: Slate } {
  const word = slateKey(scene).replace(/\d+$/, '');
  if (isIn(SERIES.wild, word)) return { kind: 'wild' };
  if (isIn(SERIES.tone, word)) return { kind: 'tone' };
  const before = was?.style === 'numbered' ? was : { number: 0, scene: '' };
  const read = parseSlate(scene, style, before.scene);
  if (read.ok) return { slate: read.value };
  // A scene that is no valid slate of this style is still used as its name.
  const text = cutText(scene.trim(), 200);
  return {
    slate:
      style === 'lettered' ? { style, scene: text, setup: 0 } : { style, number: before.number, scene: text },
  };
}

const isIn = (words: readonly string[], word: string): boolean => words.includes(word);

/** Where a recording starts, in frames at a rate; undefined if its files do not say. */
export function startOfFile({ start }: Recording, rate: RateId): Stamp | undefined {
  const label = start && startAtRate(start, rate).label;
  return label && { frames: label.frames, rate };
}

/** The length of a recording in whole frames; undefined if unknown, or longer than a log can hold. */
export function lengthOfFile({ length, sampleRate }: Recording, rate: RateId): Stamp | undefined {
  if (sampleRate === undefined || length === 0) return undefined;
  const { frames } = samplesToFrames(length, sampleRate, rate);
  return frames <= 100_000_000 ? { frames, rate } : undefined;
}

/** TAKE_TYPE (iXML 3.01) as fields of a take; ignores words without a matching field. */
export function fieldsOfTypes(types: readonly string[]): TakeFields {
  return {
    ...(types.includes('FALSE_START') && { falseStart: true }),
    ...(types.includes('NO_GOOD') && { noGood: true }),
    ...(types.includes('PICKUP') && { kind: 'pickup' as const }),
    ...(types.includes('WILD_TRACK') && { kind: 'wild' as const }),
  };
}

/**
 * A recording as the fields of a take, if nobody logged it. Without a scene it is a wild track, since nothing
 * says which slate it belongs to. If the files have no number, the caller assigns one.
 */
export function takeOfFile(recording: Recording, header: WorkingHeader): TakeFields {
  const { scene, take, takeTypes, circled } = recording;
  const types = fieldsOfTypes(takeTypes);
  const number = takeNumber(take);
  const start = startOfFile(recording, header.timecodeRate);
  const length = lengthOfFile(recording, header.timecodeRate);
  const name = recordingName(recording);
  const isNoGood = types.noGood === true;
  return {
    ...(scene === undefined ? { kind: 'wild' as const } : slateOfFile(scene, header.slateStyle)),
    ...types,
    ...(number !== undefined && { number }),
    ...(start && { start }),
    ...(length && { length }),
    ...(circled === true && !isNoGood && { circled }),
    ...(name.length <= 200 && { file: name }),
  };
}
