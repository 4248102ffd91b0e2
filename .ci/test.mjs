// Runs every check there is and ends with `N passed, N failed`. Checks run beside each other so that no core waits, and
// are printed after each other, cheapest first.
import { spawn } from 'node:child_process';
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

/** Starts one of the installed tools. What it prints is kept until somebody asks for it. */
function start(command, args, more = {}) {
  const env = { ...process.env, ...(process.stdout.isTTY && { FORCE_COLOR: '1' }), ...more };
  const shell = process.platform === 'win32';
  const tool = spawn('npx', ['--no-install', command, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env,
    shell,
  });
  let kept = '';
  let print = (text) => {
    kept += text;
  };
  for (const stream of [tool.stdout, tool.stderr])
    stream.setEncoding('utf8').on('data', (text) => print(text));
  const ended = new Promise((done) => {
    tool.on('error', () => done(1));
    tool.on('close', (status) => done(status));
  });
  return {
    /** Prints what it has printed, and what it prints from now on; gives its exit status when it ends. */
    printed: () => {
      print = (text) => process.stdout.write(text);
      print(kept);
      return ended;
    },
  };
}

/** A check that is one command: it passes or fails as a whole. */
function check(name, command, args) {
  const tool = start(command, args);
  return async () => {
    console.log(`\n== ${name}`);
    if ((await tool.printed()) === 0) passed += 1;
    else {
      failed += 1;
      console.log(`${name} failed`);
    }
  };
}

/** Vitest projects: every test counts, and a run that closed on none is a failure. */
function suite(name, projects, env) {
  const file = join(reports, `${projects[0]}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${file}`];
  const chosen = projects.flatMap((project) => ['--project', project]);
  const tool = start('vitest', ['run', ...chosen, ...reporters], env);
  return async () => {
    console.log(`\n== ${name}`);
    const status = await tool.printed();
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
  };
}

/** Each is running by now; they are waited for, and printed, one after another. */
async function inTurn(...running) {
  for (const one of running) await one();
}

if (!only || only === 'static') {
  await inTurn(
    check('types', 'tsc', ['-p', 'tsconfig.json']),
    check('types of the pure rooms, without a browser', 'tsc', ['-p', 'tsconfig.pure.json']),
    check('types of the worker', 'tsc', ['-p', 'tsconfig.worker.json']),
    check('lint and format', 'biome', ['ci', '--error-on-warnings']),
  );
}
// The browsers wait much of the time; one process of unit tests beside them fills it.
const unit = (env) => suite('unit and outside checks', ['unit', 'unit-alone'], env);
// The suite builds the app itself when the sources changed since the last build.
const browser = () => suite('the built app in browsers', ['browser', 'browser-timed']);
if (!only) await inTurn(unit({ UNIT_WORKERS: '1' }), browser());
else if (only === 'unit') await inTurn(unit());
else if (only === 'browser') await inTurn(browser());

rmSync(reports, { recursive: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
