// Installs the locked packages once, so that `npm start` and `npm test` work on a fresh clone.
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readFileSync, writeFileSync } from 'node:fs';

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Rollbook needs Node 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const readLock = () => readFileSync(new URL('../package-lock.json', import.meta.url), 'utf8');
const stamp = new URL('../node_modules/.rollbook-lock', import.meta.url);
// npm empties the folder first. Where it is a link it belongs to another checkout, which must not be emptied.
const isBorrowed = lstatSync(new URL('../node_modules', import.meta.url), {
  throwIfNoEntry: false,
})?.isSymbolicLink();
if (isBorrowed) {
  console.log('The packages belong to another checkout (node_modules is a link) and are used as they are.');
} else if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== readLock()) {
  console.log('Installing the locked packages (once) ...');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const { status } = spawnSync(npm, ['ci', '--no-audit', '--no-fund', '--include=dev'], {
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (status !== 0) {
    console.error('The packages could not be installed; npm says why above.');
    process.exit(1);
  }
  // Read again: npm may have put the lock file's own ranges in line with package.json.
  writeFileSync(stamp, readLock());
}
