import { describe, expect, test } from 'vitest';
import { bext, bytesOf, chunk, data, fmt, ixml, join } from '../build-wave.ts';
import { codesOf, describedChunks, describedIXml } from '../described.ts';

const low = (value: string, high = ''): string =>
  `<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>${high}</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>` +
  `<TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>${value}</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>`;

describe('numbers in iXML', () => {
  test.each([
    ['4294967295', '', 2 ** 32 - 1],
    ['4294967296', '', undefined],
    ['0', '65535', 65_535 * 2 ** 32],
    ['0', '65536', undefined],
    ['7.0', '1.', 2 ** 32 + 7],
    ['7.5', '', undefined],
    ['-1', '', undefined],
    ['', '1', undefined],
  ])('words of 32 bits: %s below %s are %s', async (value, high, samples) => {
    expect((await describedIXml(low(value, high))).ixml?.speed.timestampSamples).toBe(samples);
  });

  test('that do not fit two words are told together, a long one by its first forty characters', async () => {
    const file = await describedIXml(low('4294967296', '3'));
    expect(file.warnings).toEqual([
      {
        code: 'ixml-number-unreadable',
        at: 12 + 24 + 488,
        element: 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO',
        text: '3 4294967296',
      },
    ]);
    const long = await describedIXml(`<SPEED><FILE_SAMPLE_RATE>${'x'.repeat(41)}</FILE_SAMPLE_RATE></SPEED>`);
    expect(long.warnings).toMatchObject([{ text: 'x'.repeat(40) }]);
    const rate = await describedIXml(`<SPEED><TIMECODE_RATE>${'y'.repeat(41)}</TIMECODE_RATE></SPEED>`);
    expect(rate.warnings).toMatchObject([{ code: 'ixml-rate-unknown', text: 'y'.repeat(40) }]);
  });
});

describe('iXML objects', () => {
  test('are undefined where they are not there', async () => {
    const { ixml: read } = await describedIXml('<SCENE>5</SCENE>');
    for (const part of ['fileSet', 'bext'] as const) expect(read?.[part], part).toBeUndefined();
  });

  test('hold every value of their own', async () => {
    const { ixml: read } = await describedIXml(
      '<BEXT><BWF_DESCRIPTION>d</BWF_DESCRIPTION><BWF_ORIGINATOR>o</BWF_ORIGINATOR>' +
        '<BWF_ORIGINATOR_REFERENCE>r</BWF_ORIGINATOR_REFERENCE><BWF_ORIGINATION_DATE>2026-10-07</BWF_ORIGINATION_DATE>' +
        '<BWF_ORIGINATION_TIME>09:45:12</BWF_ORIGINATION_TIME><BWF_TIME_REFERENCE_LOW>5</BWF_TIME_REFERENCE_LOW>' +
        '<BWF_TIME_REFERENCE_HIGH>1</BWF_TIME_REFERENCE_HIGH></BEXT>' +
        '<FILE_SET><TOTAL_FILES>4</TOTAL_FILES><FAMILY_UID>f</FAMILY_UID><FILE_SET_INDEX>2</FILE_SET_INDEX></FILE_SET>',
    );
    expect(read?.fileSet).toEqual({ totalFiles: 4, familyUid: 'f', index: '2' });
    expect(read?.bext).toEqual({
      description: 'd',
      originator: 'o',
      originatorReference: 'r',
      originationDate: '2026-10-07',
      originationTime: '09:45:12',
      timeReference: 2 ** 32 + 5,
    });
  });

  test('as sync points and tracks stand under the root as well', async () => {
    const { ixml: read } = await describedIXml(
      '<TRACK><NAME>Boom</NAME></TRACK><SYNC_POINT><SYNC_POINT_FUNCTION>SLATE_GENERIC</SYNC_POINT_FUNCTION></SYNC_POINT>',
    );
    expect(read?.tracks.map(({ name }) => name)).toEqual(['Boom']);
    expect(read?.syncPoints.map((point) => point.function)).toEqual(['SLATE_GENERIC']);
  });
});

describe('SPEED', () => {
  const speedOf = async (inside: string) => (await describedIXml(`<SPEED>${inside}</SPEED>`)).ixml!.speed;

  test('takes a timestamp rate of zero for none', async () => {
    expect(
      (await speedOf('<TIMESTAMP_SAMPLE_RATE>0</TIMESTAMP_SAMPLE_RATE>')).timestampSampleRate,
    ).toBeUndefined();
  });

  test('has no drop-frame at a rate that knows none, whatever the flag says', async () => {
    const inside = '<TIMECODE_RATE>25/1</TIMECODE_RATE><TIMECODE_FLAG>DF</TIMECODE_FLAG>';
    expect(await speedOf(inside)).toMatchObject({ rate: '25' });
    expect(await speedOf(inside.replace('25/1', '12/1'))).toMatchObject({ rate: undefined });
  });
});

describe('take types', () => {
  test('are read up to fifty words', async () => {
    const words = Array.from({ length: 51 }, (_, index) => `W${index}`);
    const { ixml: read } = await describedIXml(`<TAKE_TYPE>${words.join(',')}</TAKE_TYPE>`);
    expect(read?.takeTypes).toEqual(words.slice(0, 50));
  });

  test('in small letters are the words of the list, others stay as written', async () => {
    const { ixml: read } = await describedIXml('<TAKE_TYPE>default,wild_track,own word</TAKE_TYPE>');
    expect(read?.takeTypes).toEqual(['WILD_TRACK', 'own word']);
  });
});

describe('the iXML chunk', () => {
  const tagged = (count: number): string => `<SCENE>5</SCENE>${'<y/>'.repeat(count - 5)}`;

  test('is parsed whole up to 60,000 tags', async () => {
    expect(codesOf(await describedIXml(tagged(60_000)))).toEqual([]);
    const file = await describedIXml(tagged(60_001));
    expect(file.warnings).toEqual([{ code: 'ixml-too-many-elements', at: 524, most: 60_000 }]);
    expect(file.ixml).toMatchObject({ wellFormed: false, scene: '5' });
  });

  test('says how many tracks it announced and how many there are', async () => {
    const file = await describedIXml('<TRACK_LIST><TRACK_COUNT>3</TRACK_COUNT><TRACK></TRACK></TRACK_LIST>');
    expect(file.warnings).toEqual([{ code: 'track-count-differs', at: 524, announced: 3, found: 1 }]);
  });

  test.each([
    ['big-endian', Uint8Array.of(0, 0)],
    ['big-endian, an odd number of them', Uint8Array.of(0, 0, 0)],
  ])('as UTF-16 %s may have NULs before it', async (_, before) => {
    const wide = [...'<BWFXML><SCENE>21A</SCENE></BWFXML>'].flatMap((letter) => [0, letter.charCodeAt(0)]);
    const file = await describedChunks([fmt(), data(), chunk('iXML', join(before, Uint8Array.from(wide)))]);
    expect(file.ixml?.scene).toBe('21A');
  });

  test('as UTF-16 little-endian may have NULs before it', async () => {
    const wide = [...'<BWFXML><SCENE>21A</SCENE></BWFXML>'].flatMap((letter) => [letter.charCodeAt(0), 0]);
    for (const count of [1, 2, 3, 4]) {
      const payload = join(new Uint8Array(count), Uint8Array.from(wide));
      const file = await describedChunks([fmt(), data(), chunk('iXML', payload)]);
      expect(file.ixml?.scene, `${count} before it`).toBe('21A');
    }
  });

  test('loses what XML forbids and keeps tab and line ends', async () => {
    const payload = bytesOf('<BWFXML><NOTE>a\u0001b\u0008c\td\u000be\nf\u001fg</NOTE></BWFXML>');
    const file = await describedChunks([fmt(), data(), chunk('iXML', payload)]);
    expect(file.ixml?.note).toBe('abc\tde\nfg');
  });

  test('of two that are not well-formed the last counts', async () => {
    const broken = (scene: string) => chunk('iXML', `<BWFXML><SCENE>${scene}</SCENE>`);
    const file = await describedChunks([fmt(), data(), broken('1'), broken('2')]);
    expect(file.ixml?.scene).toBe('2');
    expect(file.warnings[0]).toEqual({ code: 'chunk-repeated', at: 524 + 8 + 24, id: 'iXML' });
  });

  test('of two that are too long together the first one read leaves the other what is left', async () => {
    const MiB = 1024 * 1024;
    const long = (scene: string) => chunk('iXML', `<BWFXML><SCENE>${scene}</SCENE>${' '.repeat(3 * MiB)}`);
    const file = await describedChunks([fmt(), data(), long('1'), long('2')]);
    const { byteLength } = long('1').payload;
    expect(file.ixml?.scene).toBe('2');
    expect(file.warnings.filter(({ code }) => code === 'ixml-cut')).toEqual([
      { code: 'ixml-cut', at: 524, size: byteLength, most: 4 * MiB - byteLength },
    ]);
  });
});

test('every value that the copy of bext says otherwise is told, with both', async () => {
  const file = await describedChunks([
    bext({
      description: 'a',
      originator: 'b',
      originatorReference: 'c',
      date: '2026-10-07',
      time: '09:45:12',
      timeReference: 5,
    }),
    fmt(),
    data(),
    ixml(
      '<BEXT><BWF_DESCRIPTION>A</BWF_DESCRIPTION><BWF_ORIGINATOR>B</BWF_ORIGINATOR>' +
        '<BWF_ORIGINATOR_REFERENCE>C</BWF_ORIGINATOR_REFERENCE><BWF_ORIGINATION_DATE>2026-10-08</BWF_ORIGINATION_DATE>' +
        '<BWF_ORIGINATION_TIME>09.45.13</BWF_ORIGINATION_TIME><BWF_TIME_REFERENCE_LOW>6</BWF_TIME_REFERENCE_LOW></BEXT>',
    ),
  ]);
  const at = file.ixml!.at;
  const differs = (field: string, kept: unknown, other: unknown) => ({
    code: 'value-differs',
    at,
    field: `bext.${field}`,
    kept,
    other,
    keptFrom: 'bext',
    otherFrom: 'ixml',
  });
  expect(file.warnings).toEqual([
    differs('description', 'a', 'A'),
    differs('originator', 'b', 'B'),
    differs('originatorReference', 'c', 'C'),
    differs('originationDate', '20261007', '20261008'),
    differs('originationTime', '094512', '094513'),
    differs('timeReference', 5, 6),
  ]);
});
