import type { Page } from 'playwright-core';

interface CopyFile {
  /** The folder of its day. */
  readonly folder: string;
  readonly name: string;
  readonly text: string;
}

/** The files of the copies beside the database, read past the app. */
export const copyFiles = (page: Page): Promise<CopyFile[]> =>
  page.evaluate(async () => {
    const found: CopyFile[] = [];
    const root = await navigator.storage.getDirectory();
    const copies = await root.getDirectoryHandle('copies', { create: true });
    for await (const day of copies.values() as AsyncIterable<FileSystemDirectoryHandle>)
      for await (const file of day.values() as AsyncIterable<FileSystemFileHandle>)
        found.push({ folder: day.name, name: file.name, text: await (await file.getFile()).text() });
    return found;
  });

/** All that they say, of all days. */
export const copiedText = async (page: Page): Promise<string> =>
  (await copyFiles(page)).map(({ text }) => text).join('');

/** Takes facts out of them, as if a kill had come before they were written there. */
export const takeFromCopies = (page: Page, ids: readonly string[]): Promise<void> =>
  page.evaluate(async (gone) => {
    const root = await navigator.storage.getDirectory();
    const copies = await root.getDirectoryHandle('copies');
    for await (const day of copies.values() as AsyncIterable<FileSystemDirectoryHandle>)
      for await (const file of day.values() as AsyncIterable<FileSystemFileHandle>) {
        const lines = (await (await file.getFile()).text()).split('\n');
        const writing = await file.createWritable();
        await writing.write(lines.filter((line) => !gone.some((id) => line.includes(id))).join('\n'));
        await writing.close();
      }
  }, ids);

/** Changes what stands in them, past the app, as a failing flash may. */
export const changeCopies = (page: Page, from: string, to: string): Promise<void> =>
  page.evaluate(
    async ([old, changed]) => {
      const root = await navigator.storage.getDirectory();
      const copies = await root.getDirectoryHandle('copies');
      for await (const day of copies.values() as AsyncIterable<FileSystemDirectoryHandle>)
        for await (const file of day.values() as AsyncIterable<FileSystemFileHandle>) {
          const text = await (await file.getFile()).text();
          const writing = await file.createWritable();
          await writing.write(text.replaceAll(old, changed));
          await writing.close();
        }
    },
    [from, to] as const,
  );

/** Folders of days, empty ones too. */
export const copyFolders = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const names: string[] = [];
    const root = await navigator.storage.getDirectory();
    const copies = await root.getDirectoryHandle('copies', { create: true });
    for await (const day of copies.values()) names.push(day.name);
    return names;
  });

/** Runs before the page: a browser that has no such files. */
export function withoutCopies(): void {
  Object.defineProperty(StorageManager.prototype, 'getDirectory', {
    value: () => Promise.reject(new DOMException('not here', 'SecurityError')),
  });
}
