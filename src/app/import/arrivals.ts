import { signal } from '@preact/signals';
import type { Problem } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import { type DayImport, importDays } from './import-days.ts';
import { discardShared, sharedFiles } from './shared-files.ts';

interface Launched {
  readonly files?: readonly FileSystemFileHandle[];
  readonly targetURL?: string;
}

interface LaunchQueue {
  setConsumer(consume: (launched: Launched) => void): void;
}

/** Files the system opened with the app, or that were read off another phone, until the page picks them up. */
let handed: readonly File[] = [];
let handedHow: 'opened' | 'read' = 'opened';

/** How often files were opened, so that an open page picks up the next ones too. */
export const timesHanded = signal(0);

/** Recordings from outside the app, until a card check picks them up. */
export const recordingsArrived = signal<readonly File[]>([]);

/** Opens the import for these files. */
export function handOver(files: readonly File[], how: 'opened' | 'read'): void {
  handed = files;
  handedHow = how;
  timesHanded.value += 1;
  location.hash = '#/shared';
}

/**
 * Handles the system bringing this window forward, for a shortcut or with files (W3C Launch Handler and File
 * Handling; `launch_handler` and `file_handlers` in the manifest).
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
      handOver(await Promise.all(files.map((handle) => handle.getFile())), 'opened');
    })();
  });
}

/** What the system or another app sent. */
export type Arrival =
  | { readonly kind: 'day-files'; readonly days: DayImport }
  /** They wait in `recordingsArrived`; no fact is recorded. */
  | { readonly kind: 'recordings' }
  | { readonly kind: 'nothing'; readonly problem?: Problem };

/**
 * Picks up what arrived. Opened files are returned once; shared ones wait until they are imported or
 * discarded, unless none of them can ever be imported.
 */
export async function takeUpArrival(app: AppStore): Promise<Arrival> {
  const { how, recordings, others } = await arrivedFiles();
  if (recordings.length > 0) {
    recordingsArrived.value = recordings;
    if (others.length === 0) {
      // Without a day they wait until there is one.
      if (how === 'shared' && app.days.peek().length > 0) await discardShared();
      return { kind: 'recordings' };
    }
  }
  const days = others.length > 0 ? await importDays(app, { how, files: others }) : null;
  if (days?.ok) return { kind: 'day-files', days: days.value };
  if (how === 'shared') await discardShared();
  return { kind: 'nothing', ...(days && { problem: days.problem }) };
}

async function arrivedFiles() {
  const opened = handed;
  handed = [];
  const files = opened.length > 0 ? opened : await sharedFiles();
  const are = await Promise.all(files.map(isRecording));
  return {
    how: opened.length > 0 ? handedHow : 'shared',
    recordings: files.filter((_, at) => are[at]),
    others: files.filter((_, at) => !are[at]),
  } as const;
}

/** True if it begins as a recording: RIFF, RF64 (EBU Tech 3306) or BW64 (ITU-R BS.2088). */
async function isRecording(file: File): Promise<boolean> {
  return /^(RIFF|RF64|BW64)$/.test(await file.slice(0, 4).text());
}
