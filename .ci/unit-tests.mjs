// Tells the unit tests that run beside others in one process from those that need one of their own.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** These rooms remember things in their modules; the pure ones do not. */
const REMEMBERS = /^tests\/(app|storage|ui)\//;

/** What others in the same process would notice: stubs, modules loaded anew, globals, the environment, a database. */
const CHANGES_WHAT_IS_SHARED =
  /\bvi\.(stub|spyOn|mock|doMock|useFake|resetModules)|fake-indexeddb|\bdefineProperty\((globalThis|window|[A-Z])|\bglobalThis\.\w+ = |\bprocess\.(env\b.* = |chdir|on\()/;

/** Paths, below the root, of the tests that get a process and modules of their own. */
export const aloneTests = (root) =>
  readdirSync(join(root, 'tests'), { recursive: true })
    .map((path) => join('tests', path).replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.test.ts') && !/^tests\/(browser|engines)\//.test(path))
    .filter(
      (path) => REMEMBERS.test(path) || CHANGES_WHAT_IS_SHARED.test(readFileSync(join(root, path), 'utf8')),
    );
