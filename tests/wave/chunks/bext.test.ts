import { describe, expect, test } from 'vitest';
import { bext, bextPayload, bytesOf, chunk, data, fmt, fromHex, join } from '../build-wave.ts';
import { codesOf, describedChunks } from '../described.ts';

const readWith = async (wanted: Parameters<typeof bext>[0]) =>
  (await describedChunks([bext(wanted), fmt(), data()])).bext!;

describe('bext', () => {
  test('takes 602 bytes without a coding history (EBU Tech 3285 v2)', () => {
    expect(bextPayload().byteLength).toBe(602);
  });

  test('reads what it needs of version 2 from its place, and passes over the rest (EBU Tech 3285 v2)', async () => {
    const umid = Uint8Array.from({ length: 64 }, (_, index) => (index < 32 ? index + 1 : 0));
    const description = await describedChunks([
      bext({
        description: 'Kitchen, wide',
        originator: 'Recorder 8',
        originatorReference: 'GBXYZABC000012345094512123456789',
        date: '2026-10-07',
        time: '09:45:12',
        timeReference: 1_728_000_000,
        version: 2,
        umid,
        loudness: [-2305, 720, -120, -1850, 0x7fff],
        codingHistory: 'A=PCM,F=48000,W=24,M=mono,T=original\r\n',
      }),
      fmt(),
      data(),
    ]);
    expect(description.warnings).toEqual([]);
    expect(description.bext).toEqual({
      at: 12,
      version: 2,
      description: 'Kitchen, wide',
      originator: 'Recorder 8',
      // EBU R 99, second hand: 2 + 3 + 12 + 6 + 9 characters fill the field, so no NUL ends it.
      originatorReference: 'GBXYZABC000012345094512123456789',
      originationDate: '2026-10-07',
      originationTime: '09:45:12',
      timeReference: 1_728_000_000,
    });
  });

  test('reads a version from the future as version 2 and says so', async () => {
    const description = await describedChunks([
      bext({ version: 3, loudness: [-2300, 1, 1, 1, 1] }),
      fmt(),
      data(),
    ]);
    expect(description.bext?.version).toBe(3);
    expect(description.warnings).toEqual([{ code: 'bext-version-unknown', at: 12 + 8 + 346, version: 3 }]);
  });
});

describe('samples since midnight', () => {
  // Bytes 338 to 345 of bext, low word first (EBU Tech 3285, TimeReference); counts computed from the exact rates.
  test.each([
    ['10:00:00 at 48 kHz', 48_000, '00 30 FF 66 00 00 00 00', 1_728_000_000],
    ['10:00:00:00 at 29.97 NDF, 48 kHz', 48_000, '00 8E 19 67 00 00 00 00', 1_729_728_000],
    ['13:00:00 at 96 kHz', 96_000, '00 B0 CA 0B 01 00 00 00', 4_492_800_000],
    ['12:25:40 at 96 kHz', 96_000, '00 1C 01 00 01 00 00 00', 4_295_040_000],
    ['23:59:59 at 192 kHz', 192_000, '00 12 C2 DC 03 00 00 00', 16_588_608_000],
    ['the last sample of a day at 48 kHz', 48_000, 'FF 3F 31 F7 00 00 00 00', 4_147_199_999],
    ['a header from a public library manual', 48_000, '51 1A 97 82 00 00 00 00', 2_190_940_753],
  ])('of %s are exact', async (_, sampleRate, hex, samples) => {
    const payload = bextPayload({});
    payload.set(fromHex(hex), 338);
    const { bext: read } = await describedChunks([chunk('bext', payload), fmt({ sampleRate }), data()]);
    expect(read?.timeReference).toBe(samples);
  });

  test('are taken below 2^40 and no further', async () => {
    expect((await readWith({ timeReference: 2 ** 40 - 1 })).timeReference).toBe(2 ** 40 - 1);
    const file = await describedChunks([bext({ timeReference: 2 ** 40 }), fmt(), data()]);
    expect(file.warnings).toEqual([
      { code: 'time-reference-implausible', at: 12 + 8 + 338, samples: 2 ** 40 },
    ]);
  });

  test('beyond any day are reported and left out', async () => {
    const payload = bextPayload({});
    payload.set(new Uint8Array(8).fill(0xff), 338);
    const description = await describedChunks([chunk('bext', payload), fmt(), data()]);
    expect(description.bext?.timeReference).toBeUndefined();
    expect(description.resolved.start).toBeUndefined();
    expect(description.warnings[0]).toMatchObject({ code: 'time-reference-implausible', at: 12 + 8 + 338 });
  });
});

describe('date and time of origination', () => {
  test.each(['2026-10-07', '2026:10:07', '2026_10_07', '2026 10 07', '2026.10.07', '2026/10/07'])(
    'read %s by position, whatever the separator (EBU Tech 3285, OriginationDate)',
    async (date) => {
      expect((await readWith({ date })).originationDate).toBe('2026-10-07');
    },
  );

  test.each(['09:45:12', '09-45-12', '09.45.12'])('read %s by position', async (time) => {
    expect((await readWith({ time })).originationTime).toBe('09:45:12');
  });

  test.each(['', '          '])('are absent when empty or blank', async (date) => {
    const description = await describedChunks([bext({ date, time: '        ' }), fmt(), data()]);
    expect(description.bext).toMatchObject({ originationDate: undefined, originationTime: undefined });
    expect(description.warnings).toEqual([]);
  });

  test.each([
    ['2026-01-01', '00:00:00'],
    ['2026-12-31', '23:59:59'],
  ])('reach from the first to the last: %s %s', async (date, time) => {
    expect(await readWith({ date, time })).toMatchObject({ originationDate: date, originationTime: time });
  });

  test.each(['24:00:00', '23:60:00', '23:59:60'])('have no such time as %s', async (time) => {
    expect((await readWith({ time })).originationTime).toBeUndefined();
  });

  test.each(['2026-00-10', '2026-10-00', '2026-13-07', '2026-10-32', '0000-00-00', '26-10-07', 'yesterday!'])(
    'that cannot be, such as %s, are reported',
    async (date) => {
      const description = await describedChunks([bext({ date, time: '24:00:00' }), fmt(), data()]);
      expect(description.bext).toMatchObject({ originationDate: undefined, originationTime: undefined });
      expect(description.warnings).toEqual([
        { code: 'bext-date-unreadable', at: 12 + 8 + 320, text: date },
        { code: 'bext-date-unreadable', at: 12 + 8 + 330, text: '24:00:00' },
      ]);
    },
  );
});

describe('text fields', () => {
  test('end at the first NUL; what an earlier value left behind it is ignored', async () => {
    expect((await readWith({ originator: 'Mixer\0ld value' })).originator).toBe('Mixer');
  });

  test('that fill their width have no NUL and do not run into the next field', async () => {
    const full = await readWith({
      description: 'D'.repeat(256),
      originator: 'O'.repeat(32),
      originatorReference: 'R'.repeat(32),
      date: '2026-10-07',
      time: '09:45:12',
    });
    expect(full).toMatchObject({
      description: 'D'.repeat(256),
      originator: 'O'.repeat(32),
      originatorReference: 'R'.repeat(32),
      originationDate: '2026-10-07',
    });
  });

  test.each([
    ['UTF-8', new TextEncoder().encode('Größe'), 'utf-8'],
    ['a single-byte code page', bytesOf('Gr\u00f6\u00dfe'), 'windows-1252'],
  ])('that are not ASCII are read as %s and flagged', async (_, description, encoding) => {
    const file = await describedChunks([bext({ description }), fmt(), data()]);
    expect(file.bext?.description).toBe('Größe');
    expect(file.warnings).toEqual([{ code: 'text-not-ascii', at: 20, encoding }]);
  });

  test('are flagged at their own place', async () => {
    const file = await describedChunks([bext({ originatorReference: '\u00e9' }), fmt(), data()]);
    expect(file.warnings).toEqual([{ code: 'text-not-ascii', at: 20 + 288, encoding: 'windows-1252' }]);
  });

  test('never lose the high bit: 0xF6 is not read as v', async () => {
    expect((await readWith({ description: bytesOf('sch\u00f6n') })).description).toBe('schön');
  });
});

test('a coding history of 150 kB is passed over', async () => {
  const read = (lines: number) =>
    describedChunks([bext({ codingHistory: 'A=PCM,F=48000\r\n'.repeat(lines) }), fmt(), data()]);
  const [short, long] = [await read(1), await read(10_000)];
  expect(codesOf(long)).toEqual([]);
  expect(long.bext).toEqual(short.bext);
  // The windows that are read at the head and behind the chunk.
  expect(long.bytesRead).toBeLessThanOrEqual(24 * 1024);
});

test('a cut bext chunk gives what it holds and is reported', async () => {
  const whole = bextPayload({ description: 'First', originator: 'Recorder', date: '2026-10-07' });
  const file = await describedChunks([chunk('bext', whole.subarray(0, 330)), fmt(), data()]);
  expect(file.bext).toMatchObject({
    description: 'First',
    originator: 'Recorder',
    originationDate: '2026-10-07',
    originationTime: undefined,
    timeReference: undefined,
  });
  expect(file.warnings).toEqual([{ code: 'bext-short', at: 12, size: 330 }]);
});

test.each([
  [601, ['bext-short'], 5],
  [602, [], 5],
  [346, ['bext-short'], 5],
  [345, ['bext-short'], undefined],
])('of %i bytes the time reference is %3$s, with %j', async (size, codes, timeReference) => {
  const payload = bextPayload({ timeReference: 5 }).subarray(0, size);
  const file = await describedChunks([chunk('bext', payload), fmt(), data()]);
  expect(file.bext?.timeReference).toBe(timeReference);
  expect(codesOf(file)).toEqual(codes);
});

test('an odd bext chunk is padded and the next one found', async () => {
  const file = await describedChunks([chunk('bext', join(bextPayload(), bytesOf('x'))), fmt(), data()]);
  expect(file.format?.at).toBe(12 + 8 + 603 + 1);
  expect(file.warnings).toEqual([]);
});
