import { BIT_DEPTHS } from '../../facts/kinds/day-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { framesToMs } from '../../time/timecode.ts';
import { namesOnCard } from '../files/names-on-card.ts';
import { type FilesOf, filesOfTakes, filesOn, tracksRecorded } from '../files/take-files.ts';
import type { Day, PartId, Take, TakeId } from '../model.ts';
import { isOnRecorder } from '../recorders/rolling.ts';
import { sampleFormats } from '../settings/sample-formats.ts';
import { takesInOrder } from '../takes.ts';
import { tracksArmed } from './armed-tracks.ts';

export interface DayTotals {
  /** Everything logged and not retracted, including MOS and false starts. */
  readonly takes: number;
  readonly circled: number;
  /** Sound files: one per take, or one per track if the recorder writes mono files; none for MOS. */
  readonly files: number;
  readonly recordedMs: number;
  /** Takes with sound of unknown length: recorded time and bytes are then minimums. */
  readonly withoutLength: number;
  readonly longest: { readonly take: Take; readonly ms: number } | null;
  /** Sound only: samples of every track that carries something at the take, without file headers. */
  readonly bytes: number;
  /** The same and the files, with the armed tracks where they are known. */
  readonly written: Written;
}

export interface Written {
  readonly bytes: number;
  readonly files: number;
  /** Which tracks are counted: of some takes only the armed ones may be known. */
  readonly counting: 'armed' | 'in-use' | 'both';
}

const BYTES_PER_SAMPLE = { '16': 2, '24': 3, '32': 4, '32f': 4 } as const;

/** Real milliseconds of a take; null if its length is unknown. */
export const lengthMs = ({ length }: Take): number | null =>
  length ? framesToMs(length.frames, length.rate) : null;

/**
 * Totals of a day. Bytes are sample rate × bytes per sample × tracks × seconds: ten seconds of one track at
 * 48 kHz and 24 bit are 1 440 000. Each take counts with the format that held for it. Of the takes that a recorder
 * has, and what it wrote; or of all, each on its main recorder.
 */
export function dayTotals(day: Day, recorder?: PartId): DayTotals {
  const takes = takesInOrder(day).filter(({ id }) => !recorder || isOnRecorder(day, id, recorder));
  const filesOfEach = recorder ? filesOn(day, recorder) : filesOfTakes(day);
  const recorded = takes.filter(({ kind }) => kind !== 'mos');
  const formatOf = sampleFormats(day, recorder);
  let recordedMs = 0;
  let bytes = 0;
  const armed = new Map(recorded.map((take) => [take.id, tracksArmed(day, take, recorder)]));
  let bytesArmed = 0;
  let longest: DayTotals['longest'] = null;
  for (const take of recorded) {
    const ms = lengthMs(take) ?? 0;
    recordedMs += ms;
    if (ms > (longest?.ms ?? 0)) longest = { take, ms };
    const { sampleRate, bitDepth } = formatOf(take);
    // The sample size of an unknown bit depth cannot be computed.
    if (!isOneOf(BIT_DEPTHS, bitDepth)) continue;
    const bytesPerTrackMs = (sampleRate * BYTES_PER_SAMPLE[bitDepth]) / 1000;
    const trackBytes = Math.round(ms * bytesPerTrackMs);
    const inUse = tracksRecorded(day, take, recorder).length;
    bytes += trackBytes * inUse;
    bytesArmed += trackBytes * (armed.get(take.id) ?? inUse);
  }
  return {
    takes: takes.length,
    circled: takes.filter(({ circled }) => circled).length,
    files: [...filesOfEach.values()].reduce((sum, files) => sum + files.length, 0),
    recordedMs,
    withoutLength: recorded.filter((take) => lengthMs(take) === null).length,
    longest,
    bytes,
    written: {
      bytes: bytesArmed,
      files: filesWritten(filesOfEach, namesOnCard(day, recorder), armed),
      counting: countingOf(armed),
    },
  };
}

type Armed = ReadonlyMap<TakeId, number | null>;

function countingOf(armed: Armed): Written['counting'] {
  const known = [...armed.values()].filter((tracks) => tracks !== null).length;
  return known === 0 ? 'in-use' : known === armed.size ? 'armed' : 'both';
}

/** Of mono files every armed track has one, named in the log or not; what was seen on the card counts as it is. */
function filesWritten(filesOfEach: FilesOf, onCard: ReadonlyMap<TakeId, unknown>, armed: Armed): number {
  return [...filesOfEach].reduce((sum, [take, files]) => {
    const isMono = files.some(({ track }) => track !== null) && !onCard.has(take);
    return sum + ((isMono ? armed.get(take) : null) ?? files.length);
  }, 0);
}
