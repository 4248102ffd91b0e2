import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';

const PACKAGES = ['ffmpeg', 'sndfile-programs', 'libimage-exiftool-perl'];
const PROGRAMS = [
  'ffmpeg',
  'ffprobe',
  'sndfile-info',
  'sndfile-metadata-get',
  'sndfile-metadata-set',
  'exiftool',
];

const isThere = (program: string): boolean => spawnSync('which', [program], { stdio: 'ignore' }).status === 0;

/** Makes sure the independent programs are there, from Debian where this is Debian; throws a plain sentence if not. */
export async function installWaveTools(): Promise<void> {
  if (PROGRAMS.every(isThere)) return;
  const path = resolve(import.meta.dirname, '../../.ci/browser.mjs');
  const { installDebian } = (await import(path)) as { installDebian: (names: string[]) => boolean };
  if (!installDebian(PACKAGES) || !PROGRAMS.every(isThere))
    throw new Error(`These tests compare with independent programs: please install ${PACKAGES.join(', ')}.`);
}

/** What a program prints; throws with what it complained about. */
export function run(program: string, ...args: string[]): string {
  const done = spawnSync(program, args, { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`${program} failed: ${done.stderr || String(done.error)}`);
  return done.stdout;
}

interface Probed {
  readonly streams: readonly {
    readonly sample_rate: string;
    readonly channels: number;
    readonly bits_per_sample: number;
    readonly bits_per_raw_sample?: string;
    readonly duration_ts: number;
    readonly codec_name: string;
  }[];
  readonly format: { readonly tags?: Readonly<Record<string, string>> };
}

/** ffprobe's account of the one stream and the tags of a file. */
export function probe(path: string): {
  stream: Probed['streams'][number];
  tags: Readonly<Record<string, string>>;
} {
  const json = run('ffprobe', '-v', 'error', '-show_format', '-show_streams', '-of', 'json', path);
  const { streams, format } = JSON.parse(json) as Probed;
  return { stream: streams[0]!, tags: format.tags ?? {} };
}

/** `Name : value` lines as sndfile-metadata-get prints them. */
export function sndfileMetadata(path: string): Readonly<Record<string, string>> {
  const lines = run('sndfile-metadata-get', path).split('\n');
  const pairs = lines.map((line) => /^(.+?)\s*: (.*)$/.exec(line)).filter((match) => match !== null);
  return Object.fromEntries(pairs.map(([, name, value]) => [name!, value!.trim()]));
}

/** exiftool's account of one file, numbers unconverted: by group and name, every occurrence in the order of the file. */
export function exif(path: string): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const line of run('exiftool', '-a', '-n', '-s', '-G1', path).split('\n')) {
    const [, group, name, value] = /^\[(\S+)\]\s+(\S+)\s*: (.*)$/.exec(line) ?? [];
    if (!group || !name) continue;
    const key = `${group}:${name}`;
    found.set(key, [...(found.get(key) ?? []), value ?? '']);
  }
  return found;
}
