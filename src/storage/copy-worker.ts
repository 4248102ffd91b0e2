// Writes the copy beside the database: every action as one line, in a file of its day and of this window. What is
// written is the system's from then on, whatever becomes of the browser.

import { type Answered, type Asked, COPIES } from './copy-asked.ts';

/** What the types of a page leave out: a file that a worker writes in place (WHATWG File System). */
interface OpenFile {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  close(): void;
}
type FileInWorker = FileSystemFileHandle & { createSyncAccessHandle(): Promise<OpenFile> };

const files = new Map<string, OpenFile>();
const others = new BroadcastChannel('rollbook-copies');
const utf8 = new TextEncoder();

const copies = async (): Promise<FileSystemDirectoryHandle> =>
  (await navigator.storage.getDirectory()).getDirectoryHandle(COPIES, { create: true });

async function fileOf(folder: string, name: string): Promise<OpenFile> {
  const open = files.get(folder);
  if (open) return open;
  const day = await (await copies()).getDirectoryHandle(folder, { create: true });
  const handle = (await day.getFileHandle(name, { create: true })) as FileInWorker;
  const file = await handle.createSyncAccessHandle();
  files.set(folder, file);
  return file;
}

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

async function act(asked: Asked): Promise<void> {
  if (asked.to === 'forget') return forget(asked.folder);
  const file = await fileOf(asked.folder, asked.file);
  file.write(utf8.encode(asked.line), { at: file.getSize() });
}

let last: Promise<unknown> = Promise.resolve();

// One after another, in the order of asking: a line may not come back behind its own erasing.
addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  last = last.then(async () => {
    const done = await act(data).then(
      () => true,
      () => false,
    );
    postMessage({ done } satisfies Answered);
  });
});
others.addEventListener('message', ({ data }) => letGo(String(data)));
