import { signal } from '@preact/signals';
import { type FileRead, readAsFarAsPossible } from '../../app/regain.ts';
import type { Problem } from '../../shared/result.ts';

/** Larger than any day: not worth reading to find that out. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Where the worker keeps what another app shared (src/offline/worker/share-target.ts). */
const SHARED_CACHE = 'rollbook-shared';

interface Launched {
  readonly files?: readonly FileSystemFileHandle[];
  readonly targetURL?: string;
}

interface LaunchQueue {
  setConsumer(consume: (launched: Launched) => void): void;
}

/** Files that the system opened with the app, until its page has taken them up. */
let handed: readonly File[] = [];

/** How often files were handed over: a page that is open already takes up the next ones too. */
export const timesHanded = signal(0);

/** Recordings that came from outside, until the card check of a day has taken them up. */
export const recordingsArrived = signal<readonly File[]>([]);

/** Reads day files as far as they can be read; one that is larger than any day is not read at all. */
export async function readDayFiles(files: readonly File[]): Promise<readonly FileRead[] | Problem> {
  if (files.some(({ size }) => size > MOST_BYTES)) return { code: 'day-file-too-large' };
  const reads: FileRead[] = [];
  for (const file of files) reads.push(readAsFarAsPossible(file.name, await file.text()));
  return reads;
}

/**
 * Follows the system when it brings this window forward: to a shortcut, or with files opened by this app (W3C Launch
 * Handler and File Handling; in the manifest `launch_handler` and `file_handlers`).
 */
export function hearLaunches(): void {
  const { launchQueue } = window as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files = [], targetURL }) => {
    void (async () => {
      if (files.length === 0) {
        const hash = targetURL ? new URL(targetURL).hash : '';
        if (hash) location.hash = hash;
        return;
      }
      handed = await Promise.all(files.map((handle) => handle.getFile()));
      timesHanded.value += 1;
      location.hash = '#/shared';
    })();
  });
}

/** What the system or another app handed over. */
export interface Arrived {
  readonly how: 'opened' | 'shared';
  readonly recordings: readonly File[];
  /** Whatever else it is. */
  readonly others: readonly File[];
}

/** Files that were opened are given once. What was shared waits until it is taken in or thrown away. */
export async function arrivedFiles(): Promise<Arrived> {
  const opened = handed;
  handed = [];
  const files = opened.length > 0 ? opened : await sharedFiles();
  const are = await Promise.all(files.map(isRecording));
  return {
    how: opened.length > 0 ? 'opened' : 'shared',
    recordings: files.filter((_, at) => are[at]),
    others: files.filter((_, at) => !are[at]),
  };
}

/** The names of what was shared and waits. */
export async function waitingNames(): Promise<readonly string[]> {
  if (!('caches' in window) || !(await caches.has(SHARED_CACHE))) return [];
  return (await keptShares()).map(({ name }) => name);
}

/** Nothing that was shared waits any more. */
export const discardShared = (): Promise<boolean> => caches.delete(SHARED_CACHE);

async function keptShares(): Promise<{ readonly name: string; readonly kept: Response }[]> {
  const cache = await caches.open(SHARED_CACHE);
  const shares: { name: string; kept: Response }[] = [];
  for (const request of await cache.keys()) {
    const kept = await cache.match(request);
    const name = decodeURIComponent(kept?.headers.get('x-name') ?? '') || 'What was shared';
    if (kept) shares.push({ name, kept });
  }
  return shares;
}

const sharedFiles = async (): Promise<readonly File[]> =>
  Promise.all((await keptShares()).map(async ({ name, kept }) => new File([await kept.blob()], name)));

/** RIFF, RF64 (EBU Tech 3306) and BW64 (ITU-R BS.2088) begin with their names; whatever else it is, it is no recording. */
export async function isRecording(file: File): Promise<boolean> {
  return /^(RIFF|RF64|BW64)$/.test(await file.slice(0, 4).text());
}
