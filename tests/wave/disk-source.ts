import { closeSync, mkdtempSync, openSync, readSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { ByteSource } from '../../src/wave/riff/header-reader.ts';

/** A file on disk as a source; opened for each read, as a browser does with a File. */
export function diskSource(path: string): ByteSource {
  return {
    name: basename(path),
    size: statSync(path).size,
    read: (from, to) => {
      const file = openSync(path, 'r');
      try {
        const bytes = new Uint8Array(to - from);
        return Promise.resolve(bytes.subarray(0, readSync(file, bytes, 0, bytes.byteLength, from)));
      } finally {
        closeSync(file);
      }
    },
  };
}

/** A directory of its own, and how to remove it. */
export function scratchDirectory(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'waves-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
