// What the list of files that the worker keeps says of each besides its name (src/offline/worker/kept-files.ts).
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The list for a built folder: each file with a check of its content (W3C Subresource Integrity), so that one of another
 * version is never taken for it, and whether the app starts with it; these come first.
 */
export function withChecks(folder, files) {
  const read = (name) => readFileSync(join(folder, name));
  const page = read('index.html').toString();
  const named = [...page.matchAll(/(?:src|href)="\/([^"]+\.(?:js|css))"/g)].map(([, name]) => name);
  const first = new Set(['index.html', ...named]);
  return files
    .map((file) => ({
      ...file,
      integrity: `sha256-${createHash('sha256').update(read(file.url)).digest('base64')}`,
      ...(first.has(file.url) && { isFirst: true }),
    }))
    .sort((a, b) => Number(first.has(b.url)) - Number(first.has(a.url)));
}
