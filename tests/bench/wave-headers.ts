// How long one file's headers take, ours against the quickest general-purpose header reader of npm, on the same files.
import { openAsBlob, writeFileSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { join } from 'node:path';
import { parseBlob, parseFile } from 'music-metadata';
import { describeWave } from '../../src/wave/file/describe-wave.ts';
import type { ByteSource } from '../../src/wave/riff/header-reader.ts';
import { bext, buildWave, fmt, hugeData, ixml } from '../wave/build-wave.ts';
import { scratchDirectory } from '../wave/disk-source.ts';

const FILES = 500;
const ROUNDS = 5;

export interface WaveHeaderFigures {
  readonly files: number;
  /** Median milliseconds a file over the rounds, from paths and from blobs as a browser gives them. */
  readonly ours: number;
  readonly other: number;
  /** Theirs divided by ours: above 1 ours is faster, though ours also reads iXML, which theirs skips. */
  readonly ratio: number;
  readonly blobs: { readonly ours: number; readonly other: number; readonly ratio: number };
  readonly bytesReadPerFile: number;
  readonly firstResultMs: number;
}

/** Writes 500 files of eight tracks into a directory of their own, times both readers in turn, and removes them. */
export async function run(): Promise<WaveHeaderFigures> {
  const scratch = scratchDirectory();
  try {
    const paths = Array.from({ length: FILES }, (_, index) => writeOne(scratch.path, index));
    const fromPaths = await compare(paths, oursFromPath, (path) => parseFile(path));
    const blobs = await Promise.all(paths.map((path) => openAsBlob(path)));
    const fromBlobs = await compare(blobs, oursFromBlob, (blob) => parseBlob(blob));
    const cost = await costOf(paths);
    return { files: FILES, ...fromPaths, blobs: fromBlobs, ...cost };
  } finally {
    scratch.remove();
  }
}

function writeOne(directory: string, index: number): string {
  const tracks = Array.from(
    { length: 8 },
    (_, at) =>
      `<TRACK><CHANNEL_INDEX>${at + 1}</CHANNEL_INDEX><INTERLEAVE_INDEX>${at + 1}</INTERLEAVE_INDEX><NAME>Track ${at + 1}</NAME></TRACK>`,
  );
  const inside =
    `<SCENE>${1 + (index % 60)}A</SCENE><TAKE>${1 + (index % 9)}</TAKE><TAPE>R04</TAPE><CIRCLED>TRUE</CIRCLED>` +
    '<SPEED><TIMECODE_RATE>24000/1001</TIMECODE_RATE><TIMECODE_FLAG>NDF</TIMECODE_FLAG></SPEED>' +
    `<FILE_SET><FAMILY_UID>F${index}</FAMILY_UID></FILE_SET><TRACK_LIST>${tracks.join('')}</TRACK_LIST>`;
  const wave = buildWave([
    bext({
      description: `sSCENE=${index}`,
      timeReference: 1_729_728_000 + index * 960_960,
      date: '2026-10-07',
    }),
    fmt({ channels: 8 }),
    hugeData(24 * 8_000),
    ixml(inside),
  ]);
  const path = join(directory, `take-${index}.wav`);
  writeFileSync(path, wave.toBytes());
  return path;
}

async function compare<T>(
  items: readonly T[],
  ours: (item: T) => Promise<unknown>,
  other: (item: T) => Promise<unknown>,
): Promise<{ ours: number; other: number; ratio: number }> {
  const times = { ours: [] as number[], other: [] as number[] };
  // In turn, so that a busy moment of the machine hits both; the first round only warms up.
  for (let round = 0; round <= ROUNDS; round += 1) {
    const mine = await perItem(items, ours);
    const theirs = await perItem(items, other);
    if (round > 0) {
      times.ours.push(mine);
      times.other.push(theirs);
    }
  }
  const [mine, theirs] = [median(times.ours), median(times.other)];
  return { ours: mine, other: theirs, ratio: theirs / mine };
}

async function perItem<T>(items: readonly T[], read: (item: T) => Promise<unknown>): Promise<number> {
  const started = performance.now();
  for (const item of items) await read(item);
  return (performance.now() - started) / items.length;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** One open for all reads of a file, as the other reader does. */
async function oursFromPath(path: string): Promise<number> {
  const handle = await open(path, 'r');
  try {
    const { size } = await handle.stat();
    return await describeSource({ name: path, size, read: (from, to) => readAt(handle, from, to) });
  } finally {
    await handle.close();
  }
}

async function readAt(handle: FileHandle, from: number, to: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(to - from);
  const { bytesRead } = await handle.read(bytes, 0, bytes.byteLength, from);
  return bytes.subarray(0, bytesRead);
}

const oursFromBlob = (blob: Blob): Promise<number> =>
  describeSource({
    name: 'blob',
    size: blob.size,
    read: async (from, to) => new Uint8Array(await blob.slice(from, to).arrayBuffer()),
  });

/** Bytes read, after making sure that the file was understood. */
async function describeSource(source: ByteSource): Promise<number> {
  const result = await describeWave(source);
  if (!result.ok || !result.value.resolved.start?.label) throw new Error(`Not described: ${source.name}`);
  return result.value.bytesRead;
}

async function costOf(
  paths: readonly string[],
): Promise<{ bytesReadPerFile: number; firstResultMs: number }> {
  const started = performance.now();
  let bytes = await oursFromPath(paths[0]!);
  const firstResultMs = performance.now() - started;
  for (const path of paths.slice(1)) bytes += await oursFromPath(path);
  return { bytesReadPerFile: bytes / paths.length, firstResultMs };
}
