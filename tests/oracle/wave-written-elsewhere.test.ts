// Files written by independent programs, read by us and by further independent readers. Nothing is committed.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseFile } from 'music-metadata';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WaveFile } from 'wavefile';
import { described } from '../wave/described.ts';
import { diskSource, scratchDirectory } from '../wave/disk-source.ts';
import { SPECIFICATION_VALUES } from '../wave/ixml-sample.ts';
import { installWaveTools, probe, run, sndfileMetadata } from './wave-tools.ts';

const scratch = scratchDirectory();
beforeAll(installWaveTools, 300_000);
afterAll(scratch.remove);

const UMID = Array.from({ length: 64 }, (_, index) => (index + 1).toString(16).padStart(2, '0')).join('');

function ffmpeg(name: string, codec: string, channels: number, rate: number, ...more: string[]): string {
  const path = join(scratch.path, name);
  const source = `anoisesrc=duration=0.5:sample_rate=${rate}:seed=1`;
  run(
    'ffmpeg',
    ...['-v', 'error', '-y', '-f', 'lavfi', '-i', source, '-ac', String(channels), '-c:a', codec],
    ...['-fflags', '+bitexact', '-write_bext', '1', ...more, path],
  );
  return path;
}

const tag = (name: string, value: string): string[] => ['-metadata', `${name}=${value}`];

describe('files of ffmpeg', () => {
  test.each([
    ['pcm_s16le', 1, 48_000, 16, 'never'],
    ['pcm_s16le', 2, 44_100, 16, 'always'],
    ['pcm_s24le', 1, 48_000, 24, 'never'],
    ['pcm_s24le', 8, 96_000, 24, 'always'],
    ['pcm_s32le', 2, 192_000, 32, 'never'],
    ['pcm_f32le', 1, 48_000, 32, 'always'],
    ['pcm_f64le', 2, 48_000, 64, 'never'],
    ['pcm_u8', 1, 48_000, 8, 'never'],
  ])(
    '%s, %i channels, %i Hz, %i bits, RF64 %s: format and length agree with ffprobe',
    async (codec, channels, rate, bits, rf64) => {
      const path = ffmpeg(
        `${codec}-${channels}-${rf64}.wav`,
        codec,
        channels,
        rate,
        '-rf64',
        rf64,
        ...tag('description', 'x'),
      );
      const file = await described(diskSource(path));
      const { stream } = probe(path);
      expect(file.container).toBe(rf64 === 'always' ? 'RF64' : 'RIFF');
      expect(file.format).toMatchObject({
        channels,
        sampleRate: rate,
        containerBits: bits,
        float: codec.includes('_f'),
      });
      expect(file.format).toMatchObject({
        channels: stream.channels,
        sampleRate: Number(stream.sample_rate),
        containerBits: stream.bits_per_sample,
      });
      expect(file.resolved.length).toBe(stream.duration_ts);
      expect(file.warnings).toEqual([]);
    },
  );

  test.each([0, 1_729_728_000, 4_147_199_999, 4_492_800_000, 16_588_608_000])(
    'with bext: every field and sample %i since midnight come back',
    async (timeReference) => {
      const path = ffmpeg(
        `bext-${timeReference}.wav`,
        'pcm_s24le',
        1,
        96_000,
        ...tag('description', 'sSCENE=21A\r\nsTAKE=3\r\nsSPEED=025.000-ND'),
        ...tag('originator', 'Recorder 8'),
        ...tag('originator_reference', 'GBXYZABC000012345094512123456789'),
        ...tag('origination_date', '2026-10-07'),
        ...tag('origination_time', '09:45:12'),
        ...tag('time_reference', String(timeReference)),
        ...tag('umid', `0x${UMID}`),
        ...tag('coding_history', 'A=PCM,F=96000,W=24,M=mono,T=original'),
      );
      const file = await described(diskSource(path));
      expect(file.bext).toMatchObject({
        version: 1,
        originator: 'Recorder 8',
        originatorReference: 'GBXYZABC000012345094512123456789',
        originationDate: '2026-10-07',
        originationTime: '09:45:12',
        timeReference,
      });
      expect(file.resolved).toMatchObject({ scene: '21A', take: '3', rate: '25' });
      const { tags } = probe(path);
      expect(tags).toMatchObject({
        comment: file.bext?.description,
        encoded_by: file.bext?.originator,
        originator_reference: file.bext?.originatorReference,
        date: file.bext?.originationDate,
        creation_time: file.bext?.originationTime,
      });
      // A count of zero is left out of the account.
      expect(Number(tags.time_reference ?? 0)).toBe(file.bext?.timeReference);
    },
  );
});

describe('files of sndfile-metadata-set', () => {
  test('agree with sndfile-metadata-get in every field', async () => {
    const plain = ffmpeg('plain.wav', 'pcm_s24le', 2, 48_000);
    const path = join(scratch.path, 'sndfile.wav');
    run(
      'sndfile-metadata-set',
      ...[
        '--bext-description',
        'Kitchen, wide',
        '--bext-originator',
        'Recorder',
        '--bext-orig-ref',
        'REF 12',
      ],
      ...['--bext-orig-date', '2026-10-07', '--bext-orig-time', '09-45-12', '--bext-time-ref', '1728000000'],
      ...['--bext-loudness-value', '-23.05', '--bext-loudness-range', '7.25', '--bext-max-truepeak', '-1.5'],
      ...['--bext-max-momentary', '-18.25', '--bext-max-shortterm', '-20.5'],
      ...['--bext-coding-hist', 'A=PCM,F=48000,W=24,M=stereo,T=desk'],
      ...[plain, path],
    );
    const { bext } = await described(diskSource(path));
    const theirs = sndfileMetadata(path);
    expect(bext).toMatchObject({ version: 2, timeReference: 1_728_000_000, originationTime: '09:45:12' });
    expect(bext?.description).toBe(theirs.Description);
    expect(bext?.originator).toBe(theirs.Originator);
    expect(bext?.originatorReference).toBe(theirs['Origination ref']);
    expect(bext?.originationDate).toBe(theirs['Origination date']);
  });
});

describe('files of the npm package wavefile', () => {
  const written = (channels: number, bits: string, text: string): string => {
    const wave = new WaveFile() as WaveFile & { bext: Record<string, unknown> };
    const samples = Array.from({ length: channels }, () => Array.from({ length: 97 }, (_, index) => index));
    wave.fromScratch(channels, 48_000, bits, channels === 1 ? samples[0]! : samples);
    Object.assign(wave.bext, {
      description: 'iSCENE=4\niTAKE=2',
      originator: 'wavefile',
      originationDate: '2026:10:07',
      originationTime: '09.45.12',
      timeReference: [197_832_704, 1],
      version: 2,
      loudnessValue: 0x10000 - 2305,
      codingHistory: 'A=PCM,F=48000\r\n',
    });
    wave.setiXML(text);
    const path = join(scratch.path, `wavefile-${channels}-${bits}.wav`);
    writeFileSync(path, wave.toBuffer());
    return path;
  };

  test.each([
    [1, '16'],
    [1, '24'],
    [3, '24'],
    [2, '32f'],
    [1, '12'],
  ])('with %i channels of %s bits, bext and iXML are read as written', async (channels, bits) => {
    const text = `<?xml version="1.0"?><BWFXML>${SPECIFICATION_VALUES}</BWFXML>`;
    const path = written(channels, bits, text);
    const file = await described(diskSource(path));
    expect(file.format).toMatchObject({
      channels,
      validBits: Number.parseInt(bits, 10),
      float: bits === '32f',
    });
    expect(file.resolved).toMatchObject({ length: 97, scene: '21', take: '33' });
    expect(file.bext).toMatchObject({
      originator: 'wavefile',
      originationDate: '2026-10-07',
      originationTime: '09:45:12',
      timeReference: 4_492_800_000,
    });
    expect(file.ixml).toMatchObject({ wellFormed: true, tape: 'R04', note: 'tail slate', circled: true });
    const { format } = await parseFile(path);
    expect(format).toMatchObject({ sampleRate: 48_000, numberOfChannels: channels, numberOfSamples: 97 });
  });
});
