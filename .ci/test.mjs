// Runs every check there is, in the order cheapest first, and ends with `N passed, N failed`.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PARTS = ['static', 'unit', 'browser'];
const only = process.argv[2];
if (only && !PARTS.includes(only)) {
  console.error(`There is no part called ${only}; the parts are ${PARTS.join(', ')}.`);
  process.exit(1);
}

const reports = mkdtempSync(join(tmpdir(), 'rollbook-test-'));
let passed = 0;
let failed = 0;

/** Runs one of the installed tools and returns its exit status. */
function runTool(command, args) {
  const shell = process.platform === 'win32';
  return spawnSync('npx', ['--no-install', command, ...args], { stdio: 'inherit', shell }).status;
}

/** A check that is one command: it passes or fails as a whole. */
function check(name, command, args) {
  console.log(`\n== ${name}`);
  const status = runTool(command, args);
  if (status === 0) passed += 1;
  else {
    failed += 1;
    console.log(`${name} failed`);
  }
}

/** Vitest projects: every test counts, and a run that closed on none is a failure. */
function suite(name, ...projects) {
  console.log(`\n== ${name}`);
  const file = join(reports, `${projects[0]}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${file}`];
  const status = runTool('vitest', [
    'run',
    ...projects.flatMap((project) => ['--project', project]),
    ...reporters,
  ]);
  let report;
  try {
    report = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    report = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0 };
  }
  const notRun = report.numPendingTests + report.numTodoTests;
  passed += report.numPassedTests;
  failed += report.numFailedTests + notRun;
  if (status !== 0 && report.numFailedTests === 0) failed += 1;
  else if (report.numPassedTests === 0) failed += 1;
}

if (!only || only === 'static') {
  check('types', 'tsc', ['-p', 'tsconfig.json']);
  check('types of the pure rooms, without a browser', 'tsc', ['-p', 'tsconfig.pure.json']);
  check('types of the worker', 'tsc', ['-p', 'tsconfig.worker.json']);
  check('lint and format', 'biome', ['ci', '--error-on-warnings']);
}
if (!only || only === 'unit') suite('unit and outside checks', 'unit', 'unit-alone');
// The suite builds the app itself when the sources changed since the last build.
if (!only || only === 'browser') suite('the built app in browsers', 'browser');

rmSync(reports, { recursive: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
