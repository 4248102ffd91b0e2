// Files our own test builder makes, read by independent programs: so that builder and reader do not share an error.
import { closeSync, ftruncateSync, openSync, statSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { parseFile } from 'music-metadata';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WaveFile } from 'wavefile';
import { type BuiltWave, bext, buildWave, data, ds64, fmt, hugeData, ixml } from '../wave/build-wave.ts';
import { described } from '../wave/described.ts';
import { diskSource, scratchDirectory } from '../wave/disk-source.ts';
import { SPECIFICATION_VALUES } from '../wave/ixml-sample.ts';
import { exif, installWaveTools, probe, run, sndfileMetadata } from './wave-tools.ts';

const scratch = scratchDirectory();
beforeAll(installWaveTools, 300_000);
afterAll(scratch.remove);

const stored = (name: string, wave: BuiltWave): string => {
  const path = join(scratch.path, name);
  writeFileSync(path, wave.toBytes());
  return path;
};

const BEXT = {
  description: 'sSCENE=21A',
  originator: 'Recorder 8',
  originatorReference: 'R'.repeat(32),
  date: '2026-10-07',
  time: '09:45:12',
  timeReference: 4_492_800_000,
  version: 2,
  umid: Uint8Array.from({ length: 64 }, (_, index) => index + 1),
  loudness: [-2305, 720, -150, -1825, -2050],
  codingHistory: 'A=PCM,F=48000,W=24,M=mono,T=original\r\n',
} as const;

const built = () => buildWave([bext(BEXT), fmt({ channels: 2 }), data(600), ixml(SPECIFICATION_VALUES)]);

describe('a built file', () => {
  test('is the same to ffprobe', async () => {
    const path = stored('probe.wav', built());
    const file = await described(diskSource(path));
    const { stream, tags } = probe(path);
    expect(file.resolved.length).toBe(stream.duration_ts);
    expect(file.format).toMatchObject({ channels: stream.channels, sampleRate: Number(stream.sample_rate) });
    expect(tags).toMatchObject({
      comment: file.bext?.description,
      encoded_by: file.bext?.originator,
      originator_reference: file.bext?.originatorReference,
      date: file.bext?.originationDate,
      creation_time: file.bext?.originationTime,
      time_reference: String(file.bext?.timeReference),
      coding_history: BEXT.codingHistory,
    });
  });

  test('is the same to libsndfile', async () => {
    const path = stored('sndfile.wav', built());
    const { bext: ours, resolved } = await described(diskSource(path));
    const theirs = sndfileMetadata(path);
    expect(theirs).toMatchObject({ Description: ours?.description, Originator: ours?.originator });
    expect(theirs['Origination date']).toBe(ours?.originationDate);
    const info = run('sndfile-info', path);
    expect(Number(/^Frames\s*: (\d+)/m.exec(info)?.[1])).toBe(resolved.length);
    expect(Number(/^Sample Rate : (\d+)/m.exec(info)?.[1])).toBe(resolved.sampleRate);
  });

  test('is the same to the npm packages wavefile and music-metadata', async () => {
    const wave = built();
    const path = stored('npm.wav', wave);
    const file = await described(diskSource(path));
    const theirs = new WaveFile(wave.toBytes()) as WaveFile & {
      bext: Record<string, unknown>;
      fmt: Record<string, unknown>;
    };
    expect(theirs.fmt).toMatchObject({
      numChannels: 2,
      sampleRate: 48_000,
      bitsPerSample: file.format?.containerBits,
    });
    expect(theirs.bext).toMatchObject({
      // Kept at its full width of 256 by that reader.
      description: file.bext?.description.padEnd(256, '\0'),
      timeReference: [197_832_704, 1],
      version: file.bext?.version,
      codingHistory: BEXT.codingHistory,
    });
    expect(theirs.getiXML()).toContain(`<SCENE>${file.resolved.scene}</SCENE>`);
    const { format, native } = await parseFile(path);
    expect(format).toMatchObject({
      numberOfSamples: file.resolved.length,
      bitsPerSample: file.format?.validBits,
    });
    const low = native.exif?.find(({ id }) => id === 'bext.timeReferenceLow')?.value;
    expect(low).toBe(197_832_704);
  });

  test('holds the iXML that exiftool reads out of it', async () => {
    const path = stored('exif.wav', built());
    const { ixml: ours, bext: chunk } = await described(diskSource(path));
    const theirs = exif(path);
    expect(theirs.get('RIFF:TimeReference')).toEqual([String(chunk?.timeReference)]);
    const pairs: Record<string, unknown> = {
      Project: ours?.project,
      Scene: ours?.scene,
      Take: ours?.take,
      Tape: ours?.tape,
      Note: ours?.note,
      TakeType: ours?.takeTypes.join(', '),
      Circled: 'TRUE',
      SpeedFileSampleRate: ours?.speed.fileSampleRate,
      SpeedDigitizerSampleRate: ours?.speed.digitizerSampleRate,
      SpeedTimestampSamplesSinceMidnightLo: ours?.speed.timestampSamples,
      FileSetFamilyUid: ours?.fileSet?.familyUid,
      FileSetTotalFiles: ours?.fileSet?.totalFiles,
      BextBwfTimeReferenceLow: ours?.bext?.timeReference,
    };
    for (const [name, value] of Object.entries(pairs))
      expect([name, theirs.get(`XML:Bwfxml${name}`)]).toEqual([name, [String(value)]]);
    expect(theirs.get('XML:BwfxmlTrackListTrackName')).toEqual(ours?.tracks.map(({ name }) => name));
    expect(theirs.get('XML:BwfxmlSyncPointListSyncPointSyncPointLow')).toEqual(
      ours?.syncPoints.map(({ samples }) => String(samples)),
    );
  });
});

describe('six gigabytes of RF64 on disk, the audio a hole in the file', () => {
  async function large(path: string): Promise<void> {
    const bytes = 6_220_800_000;
    const chunks = (riffSize: number) => [
      ds64(riffSize, bytes, bytes / 24),
      bext(BEXT),
      fmt({ channels: 8 }),
      hugeData(bytes, 0xffff_ffff),
      ixml(SPECIFICATION_VALUES),
    ];
    const wave = buildWave(chunks(buildWave(chunks(0)).size - 8), { container: 'RF64' });
    const head = await wave.read(0, wave.chunkAt(3) + 8);
    const tail = await wave.read(wave.chunkAt(4), wave.size);
    const file = openSync(path, 'w');
    ftruncateSync(file, wave.size);
    writeSync(file, head, 0, head.byteLength, 0);
    writeSync(file, tail, 0, tail.byteLength, wave.chunkAt(4));
    closeSync(file);
  }

  test('have the length and tags ffprobe gives them, for two reads of ours', async () => {
    const path = join(scratch.path, 'large.wav');
    await large(path);
    expect(statSync(path).size).toBeGreaterThan(6.2e9);
    const file = await described(diskSource(path));
    const { stream, tags } = probe(path);
    expect(file.warnings.map(({ code }) => code)).not.toContain('riff-size-differs');
    expect(file.resolved.length).toBe(stream.duration_ts);
    expect(file.resolved.length).toBe(259_200_000);
    expect(tags.time_reference).toBe(String(file.bext?.timeReference));
    expect(file.resolved.take).toBe('33');
    expect(file.bytesRead).toBeLessThan(16 * 1024);
  });
});
