import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

export interface ReferenceRead {
  /** Every time it read, in order. */
  readonly times: readonly string[];
  readonly ms: number;
}

/**
 * libltc, fetched by the system's packages into a folder of its own and built there; undefined where there are no such
 * packages or no compiler. It is given 8-bit samples, as it wants them.
 */
export function referenceTimecode(
  samples: Float32Array,
  samplesAFrame: number,
  runs: number,
): ReferenceRead | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-libltc-'));
  const run = (command: string, args: readonly string[]): string | undefined => {
    const { status, stdout } = spawnSync(command, args, { cwd: folder, encoding: 'utf8', maxBuffer: 1e8 });
    return status === 0 ? stdout : undefined;
  };
  try {
    if (run('apt-get', ['download', 'libltc-dev', 'libltc11']) === undefined) return undefined;
    const packages = readdirSync(folder).filter((name) => name.endsWith('.deb'));
    if (packages.some((name) => run('dpkg', ['-x', name, 'root']) === undefined)) return undefined;
    const library = run('find', ['root', '-name', 'libltc.so.11'])?.trim();
    if (!library) return undefined;
    const source = resolve(import.meta.dirname, 'reference-timecode.c');
    const path = `-Wl,-rpath,${join(folder, dirname(library))}`;
    const built = run('cc', ['-O2', '-o', 'reference', '-I', 'root/usr/include', source, library, path]);
    if (built === undefined) return undefined;
    writeFileSync(
      join(folder, 'sound'),
      Uint8Array.from(samples, (value) => Math.round(value * 127) + 128),
    );
    const lines = run(join(folder, 'reference'), ['sound', String(samplesAFrame), String(runs)])
      ?.trim()
      .split('\n');
    if (!lines) return undefined;
    return { times: lines.slice(0, -1), ms: Number(lines.at(-1)) / 1000 };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
