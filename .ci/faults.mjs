// Runs the long versions of what tries to lose a day, and prints what was tried and what was lost.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'rollbook-faults-'));
const table = join(folder, 'table');
const files = [
  'kill',
  'power-cut',
  'two-windows',
  'storage',
  'storage-faults',
  'rebuild',
  'update',
  'clock',
].map((name) => `tests/browser/${name}.test.ts`);
const { status } = spawnSync(
  'npx',
  ['--no-install', 'vitest', 'run', '--project', 'browser', ...files, ...process.argv.slice(2)],
  {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: { ...process.env, FAULTS: 'long', FAULTS_TABLE: table },
  },
);
const lines = existsSync(table) ? readFileSync(table, 'utf8').trimEnd().split('\n') : [];
rmSync(folder, { recursive: true });

const rows = lines.map((line) => {
  const { fault, tried, lost, why } = JSON.parse(line);
  if (why) return [fault, tried, '-', `not possible here: ${why}`];
  return [fault, tried, String(lost), lost === 0 ? 'nothing lost' : 'LOST'];
});
const all = [['fault', 'tried', 'lost', 'verdict'], ...rows];
const widths = [0, 1, 2, 3].map((column) => Math.max(...all.map((row) => row[column].length)));
console.log();
for (const row of all) console.log(row.map((cell, column) => cell.padEnd(widths[column])).join(' | '));
const fine = status === 0 && rows.length > 0 && rows.every(([, , lost]) => lost === '0' || lost === '-');
console.log(fine ? '\nNothing was lost.' : '\nSomething failed; the reason stands above.');
process.exit(fine ? 0 : 1);
