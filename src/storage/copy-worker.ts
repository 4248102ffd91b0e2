// Writes the copy beside the database: every action as one line, in a file of its day and of this window. What is
// written is the system's from then on, whatever becomes of the browser.

import type { OnlyCopied } from '../app/restore.ts';
import { align } from './copy-align.ts';
import { type Answered, type Asked, NOTHING_COPIED } from './copy-asked.ts';
import { copies, type OpenFile, openFile, writeAtEnd } from './copy-files.ts';

/** The file of this window for each day that it has said something of. */
const files = new Map<string, OpenFile>();
const others = new BroadcastChannel('rollbook-copies');

function letGo(folder: string): void {
  files.get(folder)?.close();
  files.delete(folder);
}

/** Other windows let go of the file when they are told, which takes them a moment. */
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
 * The first action of a day in this window waits until the day is aligned: "saved" is said of all that the screen shows,
 * and some of it may have been killed on its way to the copy. What only the copy has is come upon again by the window.
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

// One after another, in the order of asking: a line may not come back behind its own erasing.
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
