// Writes at the head of the worker which files it keeps for no signal, where its own code (icons/kept-files.js) can read
// it: the library that keeps them has the list to itself, and a list in a file of its own could be thrown away with them.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const HEAD = /^self\.keptFiles=(\[.*\]);\n/;
/** The list as the library's builder writes it. */
const GIVEN = /(?<=\.precacheAndRoute\()\[(\{url:"[^"]*",revision:(?:null|"[^"]*")\},?)+\]/;

/** The files that the worker of a built folder keeps; throws where they are not found, so that no build goes without. */
function filesIn(worker) {
  const known = HEAD.exec(worker)?.[1];
  if (known) return JSON.parse(known);
  const given = GIVEN.exec(worker)?.[0];
  if (!given) throw new Error('The worker has no list of the files it keeps');
  return JSON.parse(given.replaceAll(/(?<=[{,])(url|revision)(?=:)/g, '"$1"'));
}

/** In a folder that was built, again after a change to its files too: what the worker keeps, with a check of each. */
export function listKeptFiles(folder) {
  const read = (name) => readFileSync(join(folder, name));
  const page = read('index.html').toString();
  const named = [...page.matchAll(/(?:src|href)="\/([^"]+\.(?:js|css))"/g)].map(([, name]) => name);
  const first = new Set(['index.html', ...named]);
  const worker = read('sw.js').toString();
  const files = filesIn(worker).map(({ url, revision }) => ({
    url,
    revision,
    sha256: createHash('sha256').update(read(url)).digest('base64'),
    ...(first.has(url) && { isFirst: true }),
  }));
  // What the app starts with is fetched first where it has to be fetched again.
  files.sort((a, b) => Number(b.isFirst ?? 0) - Number(a.isFirst ?? 0));
  const code = worker.replace(HEAD, '').replace(GIVEN, 'self.keptFiles');
  writeFileSync(join(folder, 'sw.js'), `self.keptFiles=${JSON.stringify(files)};\n${code}`);
}
