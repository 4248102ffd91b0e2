import { describe, expect, test } from 'vitest';
import { describeWave, type WaveDescription } from '../../src/wave/file/describe-wave.ts';
import { joinRecordings } from '../../src/wave/recording/recordings.ts';
import type { ByteSource } from '../../src/wave/riff/header-reader.ts';
import { READ_BUDGET } from '../../src/wave/riff/header-reader.ts';
import {
  type BuiltChunk,
  bext,
  buildWave,
  chunk,
  data,
  ds64,
  fmt,
  hugeData,
  ixml,
  join,
  u16,
  u32,
} from './build-wave.ts';
import { described } from './described.ts';
import { SPECIFICATION_VALUES } from './ixml-sample.ts';

const SEED = 20_261_007;

/** A small seeded generator of whole numbers below `limit` (mulberry32, public domain). */
function numbersFrom(seed: number): (limit: number) => number {
  let state = seed >>> 0;
  return (limit) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * limit);
  };
}

const BEXT = bext({
  description: 'sSCENE=21\r\nsTAKE=33\r\nsSPEED=023.976-ND',
  originator: 'Recorder',
  date: '2026-10-07',
  time: '09:45:12',
  timeReference: 48_048_000,
  version: 2,
  loudness: [-2305, 720, -150, -1825, -2050],
  codingHistory: 'A=PCM,F=48000,W=24,M=mono,T=original\r\n',
});

const EXTENSIBLE = chunk(
  'fmt ',
  join(
    u16(0xfffe, 2),
    u32(48_000, 288_000),
    u16(6, 24, 22, 24),
    u32(0),
    u16(1),
    Uint8Array.of(0, 0, 0, 0, 16, 0, 128, 0, 0, 170, 0, 56, 155, 113),
  ),
);

/** Short, because most of the time goes into reading it; one base has the long document. */
const SHORT =
  '<SCENE>21</SCENE><TAKE>33</TAKE><CIRCLED>TRUE</CIRCLED><SPEED><TIMECODE_RATE>24000/1001</TIMECODE_RATE></SPEED>' +
  '<FILE_SET><FAMILY_UID>F1</FAMILY_UID></FILE_SET><TRACK_LIST><TRACK><NAME>Boom</NAME></TRACK></TRACK_LIST>';

const WIDE = chunk(
  'iXML',
  join(Uint8Array.of(0xff, 0xfe), u16(...[...`<BWFXML>${SHORT}</BWFXML>`].map((one) => one.charCodeAt(0)))),
);

interface Base {
  readonly chunks: readonly BuiltChunk[];
  readonly container?: 'RIFF' | 'RF64' | 'BW64';
}

const GIGABYTES = 6_000_000_000;
const BASES: readonly Base[] = [
  { chunks: [BEXT, fmt({ channels: 2 }), data(600), ixml(SPECIFICATION_VALUES)] },
  { chunks: [chunk('JUNK', new Uint8Array(92)), EXTENSIBLE, BEXT, ixml(SHORT), data(606)] },
  { chunks: [BEXT, fmt(), chunk('note', 'odd'), hugeData(3_000_001), WIDE, chunk('LIST', 'INFO')] },
  {
    container: 'RF64',
    chunks: [
      ds64(GIGABYTES, GIGABYTES, GIGABYTES / 6),
      BEXT,
      EXTENSIBLE,
      hugeData(GIGABYTES, 0xffff_ffff),
      ixml(SHORT),
    ],
  },
  {
    container: 'BW64',
    chunks: [
      ds64(GIGABYTES, GIGABYTES, 0, [['levl', 9]]),
      fmt({ channels: 2 }),
      hugeData(GIGABYTES, 0xffff_ffff),
      BEXT,
      WIDE,
    ],
  },
];

type Patch = ReadonlyMap<number, number>;

/** The base with some bytes changed, cut to a size, and what was read of it counted. */
function mutated(base: ByteSource, patch: Patch, size = base.size) {
  let spent = 0;
  let reads = 0;
  const read = async (from: number, to: number): Promise<Uint8Array> => {
    const bytes = await base.read(from, Math.min(to, size));
    spent += bytes.byteLength;
    reads += 1;
    for (const [at, value] of patch) if (at >= from && at < from + bytes.byteLength) bytes[at - from] = value;
    return bytes;
  };
  return { name: 'mutated.wav', size, read, spent: () => spent, reads: () => reads };
}

/** Bytes that have hurt readers before, besides any. */
const NASTY = [0, 1, 0x3c, 0x7f, 0x80, 0xfe, 0xff];

const PART_IDS = { 'fmt ': 'format', bext: 'bext', iXML: 'ixml' } as const;
type PartId = keyof typeof PART_IDS;
const isPart = (id: string): id is PartId => id in PART_IDS;
const partOf = (file: WaveDescription, id: PartId): string => JSON.stringify(file[PART_IDS[id]]);

/** Follows every value but the long list of tracks; a number must be one. */
function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return value.slice(0, 200).every(allFinite);
  return value === null || typeof value !== 'object' || Object.values(value).every(allFinite);
}

/** Plain comparisons, because twenty thousand times five expectations take longer than the reading. */
function expectSound(file: WaveDescription, source: ReturnType<typeof mutated>): void {
  const sound =
    allFinite(file) &&
    source.spent() <= READ_BUDGET &&
    source.reads() < 400 &&
    file.bytesRead === source.spent() &&
    file.warnings.every(({ at }) => Number.isSafeInteger(at) && at >= 0 && at <= file.size) &&
    (file.resolved.length ?? 0) <= file.size;
  if (!sound) expect.fail(`unsound: ${JSON.stringify({ ...file, spent: source.spent() }).slice(0, 3000)}`);
}

async function describedQuickly(source: ByteSource): Promise<WaveDescription> {
  const result = await describeWave(source);
  return result.ok ? result.value : expect.fail(result.problem.code);
}

async function unharmed(): Promise<
  { base: Base; wave: ReturnType<typeof buildWave>; file: WaveDescription }[]
> {
  return Promise.all(
    BASES.map(async (base) => {
      const wave = buildWave(base.chunks, { container: base.container ?? 'RIFF' });
      return { base, wave, file: await described(wave) };
    }),
  );
}

describe(`mutated headers, seed ${SEED}`, () => {
  test('10,000 with damage inside one chunk leave the other chunks exactly as they were', async () => {
    const next = numbersFrom(SEED);
    const bases = await unharmed();
    let checked = 0;
    for (let round = 0; round < 10_000; round += 1) {
      const { base, wave, file } = bases[round % bases.length]!;
      const parts = base.chunks.flatMap(({ id }, index) => (isPart(id) ? [{ id, index }] : []));
      const hit = parts[next(parts.length)]!;
      const { byteLength } = base.chunks[hit.index]!.payload;
      const patch = new Map<number, number>();
      for (let count = 1 + next(6); count > 0; count -= 1) {
        const value = next(2) ? NASTY[next(NASTY.length)]! : next(256);
        patch.set(wave.chunkAt(hit.index) + 8 + next(byteLength), value);
      }
      const source = mutated(wave, patch);
      const changed = await describedQuickly(source);
      expectSound(changed, source);
      for (const { id } of parts.filter((part) => part.id !== hit.id))
        if (partOf(changed, id) !== partOf(file, id)) expect.fail(`round ${round}: ${hit.id} harmed ${id}`);
      if (JSON.stringify(changed.data) !== JSON.stringify(file.data))
        expect.fail(`round ${round}: harmed data`);
      checked += 1;
    }
    expect(checked).toBe(10_000);
  }, 60_000);

  test('5,000 with a damaged chunk header keep what lies before it', async () => {
    const next = numbersFrom(SEED + 1);
    const bases = await unharmed();
    let checked = 0;
    for (let round = 0; round < 5_000; round += 1) {
      const { base, wave, file } = bases[round % bases.length]!;
      const hit = next(base.chunks.length);
      const patch = new Map<number, number>();
      for (let count = 1 + next(8); count > 0; count -= 1)
        patch.set(wave.chunkAt(hit) + next(8), next(2) ? NASTY[next(NASTY.length)]! : next(256));
      const source = mutated(wave, patch);
      const changed = await describedQuickly(source);
      expectSound(changed, source);
      const before = base.chunks.slice(0, hit).flatMap(({ id }) => (isPart(id) && id !== 'iXML' ? [id] : []));
      for (const id of before)
        if (partOf(changed, id) !== partOf(file, id))
          expect.fail(`round ${round}: header ${hit} harmed ${id}`);
      checked += before.length;
    }
    expect(checked).toBeGreaterThan(2_000);
  }, 60_000);

  test('2,500 cut off anywhere keep every chunk that is still whole', async () => {
    const next = numbersFrom(SEED + 2);
    const bases = await unharmed();
    let checked = 0;
    for (let round = 0; round < 2_500; round += 1) {
      const { base, wave, file } = bases[round % bases.length]!;
      const size = next(3) ? next(Math.min(wave.size, 6000)) : wave.size - next(4000);
      const source = mutated(wave, new Map(), Math.max(0, size));
      const result = await describeWave(source);
      if (!result.ok) {
        expect(source.size).toBeLessThan(12);
        continue;
      }
      expectSound(result.value, source);
      for (const [index, { id, payload }] of base.chunks.entries()) {
        if (!isPart(id) || wave.chunkAt(index) + 8 + payload.byteLength > size) continue;
        if (partOf(result.value, id) !== partOf(file, id))
          expect.fail(`round ${round}: cut at ${size} harmed ${id}`);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(2_000);
  }, 60_000);

  test('2,500 with bytes changed anywhere, also in the first twelve, never throw', async () => {
    const next = numbersFrom(SEED + 3);
    const bases = await unharmed();
    const kept: WaveDescription[] = [];
    for (let round = 0; round < 2_500; round += 1) {
      const { wave } = bases[round % bases.length]!;
      const patch = new Map<number, number>();
      for (let count = 1 + next(200); count > 0; count -= 1) patch.set(next(4000), next(256));
      const source = mutated(wave, patch);
      const result = await describeWave(source);
      if (!result.ok) expect(result.problem.code).toBe('not-a-wave');
      else {
        expectSound(result.value, source);
        kept.push(result.value);
      }
    }
    const recordings = joinRecordings(kept);
    const counted = recordings.reduce((sum, { files, copies }) => sum + files.length + copies.length, 0);
    expect(counted).toBe(kept.length);
    expect(recordings.every(({ length }) => Number.isFinite(length))).toBe(true);
  }, 60_000);
});
