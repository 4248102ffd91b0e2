import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A disk of its own, in a file, whose power can be cut. */
export interface CutDisk {
  /** Where it is mounted. */
  readonly path: string;
  /** Keeps what has reached the disk by now, and nothing that only the system's memory holds. */
  readonly notePowerCut: () => void;
  /** The disk as it was at the cut. Whoever used it must be gone. */
  readonly startAfterCut: () => void;
  readonly remove: () => void;
}

function run(command: string, ...args: string[]): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')}: ${error?.message ?? stderr}`);
  return stdout.trim();
}

/** Why a power cut cannot be simulated on this machine; undefined where it can. */
export function whyNoCutDisk(): string | undefined {
  if (process.platform !== 'linux') return `no loop devices on ${process.platform}`;
  if (process.getuid?.() !== 0) return 'mounting a disk needs root';
  try {
    createCutDisk().remove();
    return undefined;
  } catch (error) {
    return String((error as Error).message).split('\n')[0];
  }
}

/** A killed process holds its files for a moment longer; asks until the last of them is gone. */
function unmountWhenFree(path: string): void {
  const pause = new Int32Array(new SharedArrayBuffer(4));
  for (let tries = 0; spawnSync('umount', [path]).status !== 0; tries += 1) {
    if (tries === 100) throw new Error(`${path} does not come free`);
    Atomics.wait(pause, 0, 0, 50);
  }
}

const MEGABYTES = 512;

/** Makes a disk with a journaling file system and mounts it. */
export function createCutDisk(): CutDisk {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-disk-'));
  const image = join(folder, 'disk');
  const atCut = join(folder, 'disk-at-cut');
  const path = join(folder, 'mounted');
  mkdirSync(path);
  run('truncate', '-s', `${MEGABYTES}M`, image);
  // Nothing is left to be written later, in the background, in the moment of the cut.
  run('mkfs.ext4', '-q', '-F', '-E', 'lazy_itable_init=0,lazy_journal_init=0', image);
  run('mount', '-o', 'loop', image, path);
  const device = run('findmnt', '-n', '-o', 'SOURCE', path).replace('/dev/', '');
  const written = (): string =>
    readFileSync(`/sys/block/${device}/stat`, 'utf8').split(/\s+/).slice(4, 9).join();

  return {
    path,
    notePowerCut() {
      // A copy in which something was written meanwhile is no moment that a disk was ever in.
      for (let tries = 0; tries < 40; tries += 1) {
        const before = written();
        run('cp', '--sparse=always', image, atCut);
        if (written() === before) return;
      }
      throw new Error('The disk did not come to rest');
    },
    startAfterCut() {
      unmountWhenFree(path);
      run('mount', '-o', 'loop', atCut, path);
    },
    remove() {
      spawnSync('umount', [path]);
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
