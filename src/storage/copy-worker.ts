// Writes the copy beside the database: each action as one line, in a file per day and window. Once written it
// belongs to the system, whatever happens to the browser.

import type { OnlyCopied } from '../app/restore.ts';
import { align } from './copy-align.ts';
import { type Answered, type Asked, NOTHING_COPIED } from './copy-asked.ts';
import { copies, type OpenFile, openFile, writeAtEnd } from './copy-files.ts';

/** This window's file for each day it has written to. */
const files = new Map<string, OpenFile>();
const others = new BroadcastChannel('rollbook-copies');

function letGo(folder: string): void {
  files.get(folder)?.close();
  files.delete(folder);
}

/** Other windows let go of the file when told, which takes a moment. */
const PATIENCE = [0, 50, 100, 200, 400, 800];

async function forget(folder: string): Promise<void> {
  letGo(folder);
  others.postMessage(folder);
  for (const ms of PATIENCE) {
    await new Promise((done) => setTimeout(done, ms));
    try {
      await (await copies()).removeEntry(folder, { recursive: true });
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === 'NotFoundError') return;
      if (ms === PATIENCE.at(-1)) throw error;
    }
  }
}

type Keep = Extract<Asked, { to: 'keep' }>;

/**
 * A window's first action of a day waits until the day is aligned: "saved" covers all that the screen shows,
 * and some of it may have been lost before it reached the copy.
 */
async function keep({ folder, file, line }: Keep): Promise<void> {
  const known = files.get(folder);
  if (known) return writeAtEnd(known, line);
  const day = await (await copies()).getDirectoryHandle(folder, { create: true });
  await align(folder).catch(() => {});
  const opened = await openFile(day, file);
  files.set(folder, opened);
  writeAtEnd(opened, line);
}

async function act(asked: Asked): Promise<OnlyCopied> {
  if (asked.to === 'align') return align(asked.folder);
  await (asked.to === 'keep' ? keep(asked) : forget(asked.folder));
  return NOTHING_COPIED;
}

let last: Promise<unknown> = Promise.resolve();

// One at a time, in order: a line must not reappear after its day was erased.
addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  last = last.then(async () => {
    const answer = await act(data).then(
      (onlyCopied): Answered => ({ done: true, onlyCopied }),
      (): Answered => ({ done: false, onlyCopied: NOTHING_COPIED }),
    );
    postMessage(answer);
  });
});
others.addEventListener('message', ({ data }) => letGo(String(data)));
