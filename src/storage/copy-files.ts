// The copies in the origin private file system (WHATWG File System): one folder, with a folder for each day
// in it.

/** Missing from the DOM types: a file that a worker may open to write in place. */
export interface OpenFile {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  flush(): void;
  close(): void;
}
type FileInWorker = FileSystemFileHandle & { createSyncAccessHandle(): Promise<OpenFile> };

const utf8 = new TextEncoder();

/** The folder that holds the days' folders. Rejects if the browser has no such files. */
export const copies = async (): Promise<FileSystemDirectoryHandle> =>
  (await navigator.storage.getDirectory()).getDirectoryHandle('copies', { create: true });

/** Opens a file, creating it if needed; exclusive to this worker until closed. */
export async function openFile(folder: FileSystemDirectoryHandle, name: string): Promise<OpenFile> {
  const handle = (await folder.getFileHandle(name, { create: true })) as FileInWorker;
  return handle.createSyncAccessHandle();
}

/** Throws if there is not enough room for all of it. */
export function writeAtEnd(file: OpenFile, text: string): void {
  const bytes = utf8.encode(text);
  if (file.write(bytes, { at: file.getSize() }) < bytes.length) throw new Error('No room for the copy');
}

/** The files of a folder; other windows may be writing to some of them. */
export async function filesIn(folder: FileSystemDirectoryHandle): Promise<FileSystemFileHandle[]> {
  const found: FileSystemFileHandle[] = [];
  for await (const entry of folder.values())
    if (entry.kind === 'file') found.push(entry as FileSystemFileHandle);
  return found;
}

/** The contents of files, concatenated. */
export async function textOf(files: readonly FileSystemFileHandle[]): Promise<string> {
  const texts = await Promise.all(files.map(async (file) => (await file.getFile()).text()));
  return texts.join('\n');
}
