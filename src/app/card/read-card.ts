import type { Problem } from '../../shared/result.ts';
import { describeWave, type WaveDescription } from '../../wave/file/describe-wave.ts';
import type { ByteSource } from '../../wave/riff/header-reader.ts';

/** A file that is not a wave file or could not be read, with the reason. */
export interface Refused {
  readonly name: string;
  readonly problem: Problem;
}

/** What has been read of the files chosen last. */
export interface CardRead {
  readonly done: number;
  readonly all: number;
  readonly descriptions: readonly WaveDescription[];
  readonly refused: readonly Refused[];
}

/** Reads a browser file by slices, so that large files cost nothing extra. */
export const sourceOf = (file: File): ByteSource => ({
  name: file.name,
  size: file.size,
  read: async (from, to) => new Uint8Array(await file.slice(from, to).arrayBuffer()),
});

/** A computer leaves a `._` beside every file it copies, which holds no sound. */
const isHidden = ({ name }: ByteSource): boolean => name.startsWith('.');

const isWave = (file: ByteSource): boolean => !isHidden(file) && /\.(wav|bwf|rf64|w64)$/i.test(file.name);

/** Files read at a time: a card reader answers several slices about as fast as one. */
const AT_A_TIME = 6;
/** How often progress is reported, in ms. */
const TELL_EVERY_MS = 200;

/**
 * Reads the headers of a card's files, reporting progress; when stopped, returns what it has. A file that
 * cannot be read is listed with its reason, and the rest go on.
 */
export async function readCard(
  files: readonly ByteSource[],
  stop: AbortSignal,
  onRead: (read: CardRead) => void,
): Promise<CardRead> {
  const waves = files.filter(isWave);
  const descriptions: WaveDescription[] = [];
  const refused: Refused[] = files
    .filter((file) => !isWave(file) && !isHidden(file))
    .map(({ name }) => ({ name, problem: { code: 'not-a-wave-name' } }));
  let next = 0;
  let done = 0;
  let told = 0;
  const now = (): CardRead => ({
    done,
    all: waves.length,
    descriptions: [...descriptions],
    refused: [...refused],
  });
  const readNext = async (): Promise<void> => {
    for (let file = waves[next]; file && !stop.aborted; file = waves[next]) {
      next += 1;
      const result = await describeWave(file);
      if (result.ok) descriptions.push(result.value);
      else refused.push({ name: file.name, problem: result.problem });
      done += 1;
      if (performance.now() - told > TELL_EVERY_MS) {
        told = performance.now();
        onRead(now());
      }
    }
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, readNext));
  return now();
}
