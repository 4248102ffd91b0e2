import type { Problem } from '../../shared/result.ts';
import { describeWave, type WaveDescription } from '../../wave/file/describe-wave.ts';
import { joinRecordings, type Recording } from '../../wave/recording/recordings.ts';
import type { ByteSource } from '../../wave/riff/header-reader.ts';

/** What has been read from a card so far. */
export interface CardRead {
  readonly done: number;
  readonly all: number;
  readonly bytes: number;
  readonly files: number;
  readonly recordings: readonly Recording[];
  /** Files that are not wave files or could not be read, each with the reason. */
  readonly refused: readonly { readonly name: string; readonly problem: Problem }[];
  readonly finished: boolean;
}

export const NOTHING_READ: CardRead = {
  done: 0,
  all: 0,
  bytes: 0,
  files: 0,
  recordings: [],
  refused: [],
  finished: false,
};

/** Reads a browser file by slices, so that large files cost nothing extra. */
export const sourceOf = (file: File): ByteSource => ({
  name: file.name,
  size: file.size,
  read: async (from, to) => new Uint8Array(await file.slice(from, to).arrayBuffer()),
});

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
): Promise<void> {
  const waves = files.filter(({ name }) => /\.(wav|bwf|rf64|w64)$/i.test(name));
  const descriptions: WaveDescription[] = [];
  const refused: { name: string; problem: Problem }[] = files
    .filter((file) => !waves.includes(file) && !file.name.startsWith('.'))
    .map(({ name }) => ({ name, problem: { code: 'not-a-wave-name' } }));
  let next = 0;
  let done = 0;
  let told = 0;
  const tell = (finished: boolean): void => {
    onRead({
      done,
      all: waves.length,
      bytes: descriptions.reduce((sum, { bytesRead }) => sum + bytesRead, 0),
      files: descriptions.length,
      recordings: finished ? joinRecordings(descriptions) : [],
      refused: [...refused],
      finished,
    });
  };
  const readNext = async (): Promise<void> => {
    for (let file = waves[next]; file && !stop.aborted; file = waves[next]) {
      next += 1;
      const result = await describeWave(file);
      if (result.ok) descriptions.push(result.value);
      else refused.push({ name: file.name, problem: result.problem });
      done += 1;
      if (performance.now() - told > TELL_EVERY_MS) {
        told = performance.now();
        tell(false);
      }
    }
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, readNext));
  tell(true);
}
