// Runs tests again and again in one vitest that stays warm, with the text of one file replaced in memory.
import { join } from 'node:path';
import { createVitest } from 'vitest/node';

/** Keeps the order the tests are given in. */
class AsGiven {
  shard = (tests) => tests;
  sort = (tests) => tests;
}

const OPTIONS = {
  config: false,
  watch: false,
  include: ['tests/**/*.test.ts'],
  exclude: ['tests/browser/**', 'tests/engines/**'],
  // One process runs all the files of a run, and the next run has a new one.
  pool: 'forks',
  isolate: false,
  maxWorkers: 1,
  sequence: { sequencer: AsGiven },
  bail: 1,
  testTimeout: 60_000,
  reporters: [{ onInit() {} }],
};

/** Opens vitest over the unit tests of a folder. */
export async function openWarmTests(root) {
  const replaced = { path: '', text: '' };
  const inPlace = {
    name: 'text-in-place',
    enforce: 'pre',
    load: (id) => (id === replaced.path ? replaced.text : undefined),
  };
  const vitest = await createVitest('test', { ...OPTIONS, root }, { plugins: [inPlace] });
  await vitest.standalone();
  const specifications = new Map(
    (await vitest.globTestSpecifications()).map((one) => [one.moduleId.slice(root.length + 1), one]),
  );

  function put(path, text) {
    for (const changed of new Set([replaced.path, path])) if (changed) vitest.invalidateFile(changed);
    Object.assign(replaced, { path, text });
  }

  /** What ended a run early, in words, or nothing where every test passed. */
  async function whatFailed(tests, limitMs) {
    let isLate = false;
    const clock = setTimeout(() => {
      isLate = true;
      // Twice: the first asks, the second ends the process even out of an endless loop.
      for (const _ of [1, 2]) vitest.cancelCurrentRun('keyboard-input').catch(() => {});
    }, limitMs);
    const { unhandledErrors } = await vitest.runTestSpecifications(
      tests.map((test) => specifications.get(test)),
    );
    clearTimeout(clock);
    if (isLate) return `not done after ${Math.round(limitMs / 1000)} s`;
    for (const test of tests) {
      const { testModule } = specifications.get(test);
      const [failed] = testModule?.children.allTests('failed') ?? [];
      if (failed) return `${test}: ${failed.fullName}`;
      const [error] = testModule?.errors() ?? [];
      if (error) return `${test}: ${error.message}`;
    }
    if (unhandledErrors.length > 0) return String(unhandledErrors[0].message);
    const open = tests.filter((test) => specifications.get(test).testModule?.state() !== 'passed');
    return open.length > 0 ? `not run: ${open.join(', ')}` : undefined;
  }

  return {
    tests: [...specifications.keys()],
    /** How long the file took when it ran last. */
    tookMs: (test) => specifications.get(test).testModule?.diagnostic().duration ?? 0,
    /** Runs tests with this text in the place of a file's: says what failed, or nothing. */
    async fails(tests, { file, text }, limitMs) {
      put(join(root, file), text);
      return whatFailed(tests, limitMs);
    },
    close: () => vitest.close(),
  };
}
