import { describe, expect, test } from 'vitest';
import type { RateId } from '../../../src/time/rate.ts';
import { labelAtSample, startAtRate } from '../../../src/wave/file/wave-start.ts';
import { bext, data, fmt, ixml } from '../build-wave.ts';
import { codesOf, describedChunks } from '../described.ts';
import { SPECIFICATION_VALUES } from '../ixml-sample.ts';

const speed = (rate: string, more = ''): string =>
  `<SPEED><TIMECODE_RATE>${rate}</TIMECODE_RATE>${more}</SPEED>`;
const DROP = '<TIMECODE_FLAG>DF</TIMECODE_FLAG>';

const startOf = async (samples: number, inside: string, sampleRate = 48_000) => {
  const file = await describedChunks([
    bext({ timeReference: samples }),
    fmt({ sampleRate }),
    data(),
    ixml(inside),
  ]);
  return file.resolved.start!;
};

describe('the start timecode', () => {
  // Computed from the exact rates of SMPTE ST 12-1; 1000/1001 rates count more samples to the same label.
  test.each<[string, RateId, number, number, string]>([
    ['24/1', '24', 48_000, 172_800_000, '01:00:00:00'],
    ['25/1', '25', 48_000, 172_800_000, '01:00:00:00'],
    ['30/1', '30', 48_000, 172_800_000, '01:00:00:00'],
    ['24000/1001', '23.976', 48_000, 172_972_800, '01:00:00:00'],
    ['30000/1001', '29.97', 48_000, 172_972_800, '01:00:00:00'],
    ['48000/1001', '47.952', 48_000, 172_972_800, '01:00:00:00'],
    ['24000/1001', '23.976', 48_000, 1_729_728_000, '10:00:00:00'],
    ['30000/1001', '29.97', 48_000, 1_729_728_000, '10:00:00:00'],
    ['25/1', '25', 96_000, 4_492_800_000, '13:00:00:00'],
    ['25/1', '25', 192_000, 16_588_608_000, '23:59:59:00'],
    ['24000/1001', '23.976', 48_000, 4_151_345_198, '23:59:59:23'],
    ['24000/1001', '23.976', 48_000, 48_048_000, '00:16:40:00'],
  ])('at %s (%s, %i Hz), sample %i, is %5$s', async (written, rate, sampleRate, samples, timecode) => {
    const start = await startOf(samples, speed(written), sampleRate);
    expect(start).toMatchObject({
      samples,
      source: 'bext',
      label: { rate, timecode, remainder: 0, wrapped: false },
    });
  });

  test.each([
    [172_799_827, '01:00:00;00', -1],
    [172_799_828, '01:00:00;00', 0],
    [2_882_880, '00:01:00;02', 0],
    [1_727_998_272, '10:00:00;00', 0],
  ])('of drop-frame sample %i is %s: writers round either way', async (samples, timecode, remainder) => {
    expect((await startOf(samples, speed('30000/1001', DROP))).label).toMatchObject({ timecode, remainder });
  });

  test('one sample late is the same frame (header in a public library manual): 12:39:59:00, never 12:40:44', async () => {
    expect((await startOf(2_190_940_753, speed('24000/1001'))).label).toMatchObject({
      frames: 1_094_376,
      remainder: 1,
      timecode: '12:39:59:00',
    });
  });

  test('at 48048 is counted by TIMESTAMP_SAMPLE_RATE: 01:00:00:00 and not 01:00:03:14', async () => {
    const file = await describedChunks([
      bext({ timeReference: 172_972_800 }),
      fmt(),
      data(),
      ixml(speed('24/1', '<TIMESTAMP_SAMPLE_RATE>48048</TIMESTAMP_SAMPLE_RATE>')),
    ]);
    expect(file.resolved.start).toMatchObject({
      sampleRate: 48_048,
      label: { timecode: '01:00:00:00', remainder: 0 },
    });
    expect(file.warnings).toMatchObject([
      { code: 'timestamp-rate-differs', timestamp: 48_048, file: 48_000 },
    ]);
    expect(labelAtSample(172_972_800, 48_000, '24').timecode).toBe('01:00:03:14');
  });

  test('beyond a day of labels wraps by labels, not by the clock, and is reported', async () => {
    // A day of labels at 23.976 lasts 86,486.4 s: 4,151,347,200 samples; the clock day is 4,147,200,000.
    expect((await startOf(4_147_200_000, speed('24000/1001'))).label).toMatchObject({
      timecode: '23:58:33:16',
      wrapped: false,
    });
    const file = await describedChunks([
      bext({ timeReference: 4_151_347_200 + 2002 }),
      fmt(),
      data(),
      ixml(speed('24000/1001')),
    ]);
    expect(file.resolved.start?.label).toMatchObject({ timecode: '00:00:00:01', frames: 1, wrapped: true });
    expect(codesOf(file)).toEqual(['start-past-midnight']);
  });

  test('without a named rate is a count alone, labelled when the day gives a rate', async () => {
    const start = await startOf(1_728_000_000, '');
    expect(start).toEqual({ samples: 1_728_000_000, sampleRate: 48_000, source: 'bext', label: undefined });
    expect(startAtRate(start, '25').label?.timecode).toBe('10:00:00:00');
  });

  test('comes from iXML where there is no bext', async () => {
    const file = await describedChunks([fmt(), data(), ixml(SPECIFICATION_VALUES)]);
    expect(file.resolved.start).toMatchObject({
      source: 'ixml',
      label: { frames: 24_000, timecode: '00:16:40:00' },
    });
  });
});
