import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withChecks } from '../../.ci/kept-list.mjs';

export interface ListedFile {
  readonly url: string;
  readonly revision: string | null;
  readonly integrity?: string;
}

/** The list of files in a built worker: JSON that the build put in its place. */
const LIST = /\[\{"integrity":[^\]]*\]/;

/** Makes another version of a copy of the build whose files were changed: its worker gets a new list, checks included. */
export function listAnew(
  folder: string,
  { revisions, extra = [] }: { revisions: Record<string, string>; extra?: readonly ListedFile[] },
): void {
  const path = join(folder, 'sw.js');
  const worker = readFileSync(path, 'utf8');
  const list = LIST.exec(worker)?.[0];
  if (!list) throw new Error('The built worker has no list of files');
  const known: ListedFile[] = JSON.parse(list);
  for (const url of Object.keys(revisions))
    if (!known.some((file) => file.url === url)) throw new Error(`The worker keeps no ${url}`);
  const files = known.map((file) => ({ ...file, revision: revisions[file.url] ?? file.revision }));
  const anew = JSON.stringify([...withChecks(folder, files), ...extra]);
  writeFileSync(
    path,
    worker.replace(list, () => anew),
  );
}
