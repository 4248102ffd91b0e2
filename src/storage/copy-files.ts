// The files of the copies, in the origin's private files (WHATWG File System): in one folder another one for each day.

/** What the types of a page leave out: a file that only a worker may open, to write in place. */
export interface OpenFile {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  flush(): void;
  close(): void;
}
type FileInWorker = FileSystemFileHandle & { createSyncAccessHandle(): Promise<OpenFile> };

const utf8 = new TextEncoder();

/** The folder in which every day has its own. Rejects where the browser has no such files. */
export const copies = async (): Promise<FileSystemDirectoryHandle> =>
  (await navigator.storage.getDirectory()).getDirectoryHandle('copies', { create: true });

/** Opens a file, made where it is not there, for this worker alone until it is closed. */
export async function openFile(folder: FileSystemDirectoryHandle, name: string): Promise<OpenFile> {
  const handle = (await folder.getFileHandle(name, { create: true })) as FileInWorker;
  return handle.createSyncAccessHandle();
}

/** Writes at the end; throws where less than all of it found room. */
export function writeAtEnd(file: OpenFile, text: string): void {
  const bytes = utf8.encode(text);
  if (file.write(bytes, { at: file.getSize() }) < bytes.length) throw new Error('No room for the copy');
}

/** The files of a folder; other windows may be writing in some of them. */
export async function filesIn(folder: FileSystemDirectoryHandle): Promise<FileSystemFileHandle[]> {
  const found: FileSystemFileHandle[] = [];
  for await (const entry of folder.values())
    if (entry.kind === 'file') found.push(entry as FileSystemFileHandle);
  return found;
}

/** What stands in files, one after the other. */
export async function textOf(files: readonly FileSystemFileHandle[]): Promise<string> {
  const texts = await Promise.all(files.map(async (file) => (await file.getFile()).text()));
  return texts.join('\n');
}
