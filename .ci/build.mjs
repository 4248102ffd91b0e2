// Builds dist, unless it was built from exactly these sources: no test ever sees a stale build.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const STAMP = join(ROOT, 'dist', '.built-from');
const INPUTS = [
  'src',
  'icons',
  'sample-days',
  'index.html',
  'vite.config.ts',
  '.ci/kept-list.mjs',
  '.ci/licences.mjs',
  'tsconfig.json',
  'package-lock.json',
];

/** Every file under a path, in a fixed order. */
function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

function hashOfSources() {
  const hash = createHash('sha256');
  for (const file of INPUTS.flatMap((input) => filesUnder(join(ROOT, input)))) {
    const content = readFileSync(file);
    hash.update(`${relative(ROOT, file)}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/** Builds when needed; throws when the build fails. */
export function ensureBuilt() {
  const wanted = hashOfSources();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return;
  rmSync(STAMP, { force: true });
  // A test runner sets NODE_ENV to `test`, and the build would follow it into a development build.
  const env = { ...process.env, NODE_ENV: 'production' };
  const vite = join(ROOT, 'node_modules', 'vite', 'bin', 'vite.js');
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    env,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('The app could not be built; the reason stands above.');
  writeFileSync(STAMP, wanted);
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    ensureBuilt();
  } catch (error) {
    console.error(error.message);
    process.exit(1);
  }
}
