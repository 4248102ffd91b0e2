// Runs the long versions of what tries to lose a day, and prints what was tried and what was lost.
// `npm run faults` runs all of them, `npm run faults -- kill clock` only these.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What tries each fault, tests or a program, and how many rows of the table it writes: a row that does not come is a failure. */
const FAULTS = {
  kill: ['tests/browser/kill.test.ts', 3],
  'power-cut': ['tests/browser/power-cut.test.ts', 1],
  'two-windows': ['tests/browser/two-windows.test.ts', 1],
  'storage-faults': ['tests/browser/storage-faults.test.ts', 5],
  'copy-beside': ['tests/browser/copy-beside.test.ts', 4],
  arrivals: ['tests/browser/doors.test.ts', 1],
  rebuild: ['tests/browser/rebuild.test.ts', 2],
  update: ['tests/browser/update.test.ts', 1],
  clock: ['tests/browser/clock.test.ts', 1],
  merge: ['tests/day/merge-phones.test.ts', 2],
  'three-phones': ['tests/day/several-phones.test.ts', 3],
  'accepted-plan': ['tests/plan/accepted-plan.test.ts', 1],
  'small-rigs': ['tests/plan/every-small-rig.test.ts', 1],
  live: ['tests/browser/six-phones.test.ts', 2],
  flood: ['tests/live/flood.test.ts', 1],
  proxy: ['.ci/proxy.mjs', 1],
  timecode: ['tests/ltc', 2],
  hostile: ['tests/hostile', 7],
  mutation: ['.ci/mutation.mjs', 1],
};

const asked = process.argv.slice(2);
const stranger = asked.find((name) => !Object.hasOwn(FAULTS, name));
if (stranger) {
  console.error(`There is no fault called ${stranger}; there are ${Object.keys(FAULTS).join(', ')}.`);
  process.exit(1);
}
const chosen = asked.length > 0 ? asked : Object.keys(FAULTS);
const folder = mkdtempSync(join(tmpdir(), 'rollbook-faults-'));
const table = join(folder, 'table');
const run = (command, args) =>
  spawnSync(command, args, {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: { ...process.env, FAULTS: 'long', FAULTS_TABLE: table },
  }).status === 0;
const files = chosen.map((name) => FAULTS[name][0]);
const programs = files.filter((file) => file.endsWith('.mjs'));
const tests = files.filter((file) => !programs.includes(file));
const passed = [
  tests.length === 0 || run('npx', ['--no-install', 'vitest', 'run', ...tests]),
  ...programs.map((program) => run('node', [program])),
];
const lines = existsSync(table) ? readFileSync(table, 'utf8').trimEnd().split('\n') : [];
rmSync(folder, { recursive: true });

const rows = lines.map((line) => {
  const { fault, tried, lost, why, allowed } = JSON.parse(line);
  if (why) return [fault, tried, '-', `not possible here: ${why}`];
  if (allowed !== undefined) {
    return [
      fault,
      tried,
      String(lost),
      lost > allowed ? `TOO MANY, ${allowed} allowed` : `missed, ${allowed} allowed`,
    ];
  }
  return [fault, tried, String(lost), lost === 0 ? 'nothing lost' : 'LOST'];
});
const all = [['fault', 'tried', 'lost', 'verdict'], ...rows];
const widths = [0, 1, 2, 3].map((column) => Math.max(...all.map((row) => row[column].length)));
console.log();
for (const row of all) console.log(row.map((cell, column) => cell.padEnd(widths[column])).join(' | '));
const wanted = chosen.reduce((sum, name) => sum + FAULTS[name][1], 0);
if (rows.length !== wanted) console.log(`\n${wanted} rows were to come, ${rows.length} came.`);
const fine =
  passed.every(Boolean) &&
  rows.length === wanted &&
  !rows.some(([, , , verdict]) => /^(LOST|TOO)/.test(verdict));
console.log(fine ? '\nNothing was lost.' : '\nSomething failed; the reason stands above.');
process.exit(fine ? 0 : 1);
