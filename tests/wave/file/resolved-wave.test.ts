import { describe, expect, test } from 'vitest';
import { readDescriptionLines } from '../../../src/wave/chunks/description-lines.ts';
import { bext, data, fmt, ixml } from '../build-wave.ts';
import { codesOf, describedChunks } from '../described.ts';

const LINES =
  'sSPEED=023.976-ND\r\nsTAKE=3\r\nsSCENE=21A\r\nsTAPE=R04\r\nsTRK1=Boom\r\nsTRK2=Keeper\r\nsNOTE=tail slate\r\nsFILENAME=21A-3.WAV\r\n';

describe('key=value lines of a description (common practice, no source)', () => {
  test('with s before the keys give scene, take, roll, speed and tracks', () => {
    expect(readDescriptionLines(LINES)).toMatchObject({
      scene: '21A',
      take: '3',
      tape: 'R04',
      note: 'tail slate',
      rate: '23.976',
      tracks: [
        { number: 1, name: 'Boom' },
        { number: 2, name: 'Keeper' },
      ],
    });
  });

  test('with i before the keys are the same (iXML usage page)', () => {
    expect(readDescriptionLines('iSCENE=5\niTAKE=1\niTAPE=R1\niNOTE=wild')).toMatchObject({
      scene: '5',
      take: '1',
      tape: 'R1',
      note: 'wild',
    });
  });

  test('keep an equals sign in the value, and the first of two lines', () => {
    expect(readDescriptionLines('sNOTE=a=b\nsNOTE=c')).toMatchObject({ note: 'a=b' });
  });

  test.each(['', 'Kitchen, wide', 'see scene=5', 'E=mc2 and so on'])('are not seen in %o', (text) => {
    expect(readDescriptionLines(text)?.scene).toBeUndefined();
  });

  test.each([
    ['025.000-ND', '25'],
    ['029.97-DF', '29.97DF'],
    ['029.97-ND', '29.97'],
    ['030.000-DF', '30DF'],
    ['fast', undefined],
  ])('name the speed %s as %s', (written, rate) => {
    expect(readDescriptionLines(`sSPEED=${written}`)?.rate).toBe(rate);
  });
});

describe('a value said twice', () => {
  test('is taken from iXML over description lines (iXML usage page), and a difference is shown', async () => {
    const file = await describedChunks([
      bext({ description: LINES }),
      fmt({ channels: 2 }),
      data(600),
      ixml('<SCENE>21B</SCENE><TAKE>3</TAKE><TAPE>R05</TAPE>'),
    ]);
    expect(file.resolved).toMatchObject({
      scene: '21B',
      take: '3',
      tape: 'R05',
      note: 'tail slate',
      rate: '23.976',
    });
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'scene', kept: '21B', other: '21A', at: 12 },
      { code: 'value-differs', field: 'tape', kept: 'R05', other: 'R04', at: 12 },
    ]);
  });

  test('as a note cut short by the description is no difference', async () => {
    const note = 'a long note that the description could not hold whole';
    const file = await describedChunks([
      bext({ description: `sNOTE=${note.slice(0, 20)}` }),
      fmt(),
      data(),
      ixml(`<NOTE>${note}</NOTE>`),
    ]);
    expect(file.resolved.note).toBe(note);
    expect(file.warnings).toEqual([]);
  });

  test('is taken from fmt over SPEED for sample rate and bits (note of iXML 1.5)', async () => {
    const file = await describedChunks([
      fmt({ sampleRate: 96_000 }),
      data(),
      ixml('<SPEED><FILE_SAMPLE_RATE>48000</FILE_SAMPLE_RATE><AUDIO_BIT_DEPTH>16</AUDIO_BIT_DEPTH></SPEED>'),
    ]);
    expect(file.resolved).toMatchObject({ sampleRate: 96_000, bits: 24 });
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'sampleRate', kept: 96_000, other: 48_000 },
      { code: 'value-differs', field: 'bits', kept: 24, other: 16 },
    ]);
  });

  test('is taken from bext over SPEED for the timestamp', async () => {
    const file = await describedChunks([
      bext({ timeReference: 96_000 }),
      fmt(),
      data(),
      ixml('<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>48000</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>'),
    ]);
    expect(file.resolved.start).toMatchObject({ samples: 96_000, source: 'bext' });
    expect(file.warnings).toMatchObject([{ code: 'timestamp-differs', kept: 96_000, other: 48_000 }]);
  });

  test('shows where the copy of bext in iXML disagrees', async () => {
    const file = await describedChunks([
      bext({
        description: 'a  b\r\n',
        originator: 'X',
        date: '2026-10-07',
        time: '09:45:12',
        timeReference: 5,
      }),
      fmt(),
      data(),
      ixml(
        '<BEXT><BWF_DESCRIPTION>a b</BWF_DESCRIPTION><BWF_ORIGINATOR>Y</BWF_ORIGINATOR>' +
          '<BWF_ORIGINATION_DATE>2026:10:07</BWF_ORIGINATION_DATE><BWF_TIME_REFERENCE_LOW>6</BWF_TIME_REFERENCE_LOW></BEXT>',
      ),
    ]);
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'bext.originator', kept: 'X', other: 'Y' },
      { code: 'value-differs', field: 'bext.timeReference', kept: 5, other: 6 },
    ]);
  });
});

describe('tracks', () => {
  test('stand by their place in the interleave, whatever the order of the list', async () => {
    const file = await describedChunks([
      fmt({ channels: 3 }),
      data(900),
      ixml(
        '<TRACK_LIST><TRACK><CHANNEL_INDEX>5</CHANNEL_INDEX><INTERLEAVE_INDEX>3</INTERLEAVE_INDEX><NAME>c</NAME></TRACK>' +
          '<TRACK><CHANNEL_INDEX>1</CHANNEL_INDEX><INTERLEAVE_INDEX>1</INTERLEAVE_INDEX><NAME>a</NAME></TRACK></TRACK_LIST>',
      ),
    ]);
    expect(file.resolved.tracks).toEqual([
      { interleave: 1, channel: 1, name: 'a', function: undefined },
      { interleave: 2, channel: undefined, name: undefined, function: undefined },
      { interleave: 3, channel: 5, name: 'c', function: undefined },
    ]);
  });

  test('without a place take the next one free', async () => {
    const file = await describedChunks([
      fmt({ channels: 2 }),
      data(600),
      ixml('<TRACK_LIST><TRACK><NAME>a</NAME></TRACK><TRACK><NAME>b</NAME></TRACK></TRACK_LIST>'),
    ]);
    expect(file.resolved.tracks.map(({ name }) => name)).toEqual(['a', 'b']);
  });

  test('beyond the channels of the file are reported', async () => {
    const file = await describedChunks([
      fmt(),
      data(),
      ixml(
        '<TRACK_LIST><TRACK_COUNT>9</TRACK_COUNT><TRACK><INTERLEAVE_INDEX>4</INTERLEAVE_INDEX><NAME>a</NAME></TRACK></TRACK_LIST>',
      ),
    ]);
    expect(codesOf(file)).toEqual(['track-count-differs', 'track-index-out-of-range']);
    expect(file.resolved.tracks).toHaveLength(1);
  });

  test('are named by description lines where iXML has no list', async () => {
    const stereo = await describedChunks([bext({ description: LINES }), fmt({ channels: 2 }), data(600)]);
    expect(stereo.resolved.tracks).toMatchObject([
      { interleave: 1, channel: 1, name: 'Boom' },
      { interleave: 2, channel: 2, name: 'Keeper' },
    ]);
    const mono = await describedChunks([bext({ description: 'sTRK4=Spare' }), fmt(), data()]);
    expect(mono.resolved.tracks).toMatchObject([{ interleave: 1, channel: 4, name: 'Spare' }]);
  });

  test('of a damaged format with 65535 channels end at 1024', async () => {
    const file = await describedChunks([fmt({ channels: 65_535, bits: 8 }), data(0)]);
    expect(file.resolved.tracks).toHaveLength(1024);
  });
});

describe('description lines one by one', () => {
  test.each([
    ['TRUE', true],
    ['1', true],
    ['yes', true],
    ['False', false],
    ['0', false],
    ['no', false],
    ['maybe', undefined],
    ['', undefined],
  ])('CIRCLED %o is %s', (written, circled) => {
    expect(readDescriptionLines(`sCIRCLED=${written}\nsTAKE=1`)?.circled).toBe(circled);
  });

  test('give the first line of a key that says anything, with or without a letter before the key', () => {
    const read = readDescriptionLines('sSCENE=\nSCENE= 5 \niSCENE=6\nPROJECT=Jetty\rsTAPE=12');
    expect(read).toMatchObject({
      scene: '5',
      project: 'Jetty',
      tape: '12',
      take: undefined,
      rate: undefined,
    });
  });

  test('give the tracks in the order of their numbers, each once, and none without a name', () => {
    expect(readDescriptionLines('sTRK12=L\nsTRK2=B\nsTRK2=C\nsTRK1=\nsTRK1234=X')?.tracks).toEqual([
      { number: 2, name: 'B' },
      { number: 12, name: 'L' },
    ]);
  });
});

describe('what only one part says', () => {
  const SPEED =
    '<SPEED><FILE_SAMPLE_RATE>48000</FILE_SAMPLE_RATE><AUDIO_BIT_DEPTH>0</AUDIO_BIT_DEPTH>' +
    '<TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>4800</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>';

  test('is taken from SPEED where there is no format, but a nought for nothing', async () => {
    const { resolved } = await describedChunks([data(), ixml(SPEED)]);
    expect(resolved).toMatchObject({
      sampleRate: 48_000,
      bits: undefined,
      channels: undefined,
      length: undefined,
    });
    expect(resolved.start).toEqual({ samples: 4800, sampleRate: 48_000, source: 'ixml', label: undefined });
    const without = await describedChunks([data(), ixml(SPEED.replace('48000', '0'))]);
    expect(without.resolved).toMatchObject({ sampleRate: undefined, start: undefined });
  });

  test('is taken from the copy of bext where neither bext nor SPEED has a timestamp', async () => {
    const { resolved, warnings } = await describedChunks([
      fmt(),
      data(),
      ixml('<BEXT><BWF_TIME_REFERENCE_LOW>96000</BWF_TIME_REFERENCE_LOW></BEXT>'),
    ]);
    expect(resolved.start).toMatchObject({ samples: 96_000, source: 'ixml' });
    expect(warnings).toEqual([]);
  });

  test('is circled by the lines where there is no iXML, which itself says no by leaving it out', async () => {
    const lines = bext({ description: 'sCIRCLED=TRUE\nsTAKE=1' });
    expect((await describedChunks([lines, fmt(), data()])).resolved.circled).toBe(true);
    expect((await describedChunks([lines, fmt(), data(), ixml('<TAKE>1</TAKE>')])).resolved.circled).toBe(
      false,
    );
    expect((await describedChunks([fmt(), data()])).resolved).toMatchObject({
      circled: undefined,
      takeTypes: [],
    });
  });
});

describe('a difference', () => {
  const at = { bext: 12, ixml: 12 + 610 + 24 + 488 };

  test('of the rate and of the roll is told where the lines are', async () => {
    const file = await describedChunks([
      bext({ description: 'sSPEED=025.000-ND\nsTAPE=01' }),
      fmt(),
      data(),
      ixml('<TAPE>02</TAPE><SPEED><TIMECODE_RATE>24/1</TIMECODE_RATE></SPEED>'),
    ]);
    const said = { code: 'value-differs', at: at.bext, keptFrom: 'ixml', otherFrom: 'lines' };
    expect(file.resolved).toMatchObject({ rate: '24', tape: '02' });
    expect(file.warnings).toEqual(
      expect.arrayContaining([
        { ...said, field: 'rate', kept: '24', other: '25' },
        { ...said, field: 'tape', kept: '02', other: '01' },
      ]),
    );
    expect(file.warnings).toHaveLength(2);
  });

  test('of a note that does not begin like the long one is one', async () => {
    const file = await describedChunks([
      bext({ description: 'sNOTE=other' }),
      fmt(),
      data(),
      ixml('<NOTE>other words and</NOTE>'),
    ]);
    expect(file.warnings).toEqual([]);
    const turned = await describedChunks([
      bext({ description: 'sNOTE=words and\nsSCENE=5' }),
      fmt(),
      data(),
      ixml('<NOTE>other words and</NOTE><SCENE>5A</SCENE>'),
    ]);
    expect(turned.warnings.map(({ field }) => field)).toEqual(['scene', 'note']);
  });

  test('of timestamps and clocks is told where iXML is', async () => {
    const file = await describedChunks([
      bext({ timeReference: 96_000 }),
      fmt(),
      data(),
      ixml(
        '<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>48000</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>' +
          '<TIMESTAMP_SAMPLE_RATE>48048</TIMESTAMP_SAMPLE_RATE><DIGITIZER_SAMPLE_RATE>47952</DIGITIZER_SAMPLE_RATE>' +
          '<AUDIO_BIT_DEPTH>16</AUDIO_BIT_DEPTH></SPEED>',
      ),
    ]);
    expect(file.warnings).toEqual([
      {
        code: 'value-differs',
        at: at.ixml,
        field: 'bits',
        kept: 24,
        other: 16,
        keptFrom: 'fmt',
        otherFrom: 'ixml',
      },
      { code: 'timestamp-differs', at: at.ixml, kept: 96_000, other: 48_000 },
      { code: 'timestamp-rate-differs', at: at.ixml, timestamp: 48_048, file: 48_000 },
      { code: 'digitizer-rate-differs', at: at.ixml, digitizer: 47_952, file: 48_000 },
    ]);
  });

  test('that is none is not told', async () => {
    const file = await describedChunks([
      bext({ timeReference: 48_000 }),
      fmt(),
      data(),
      ixml(
        '<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>48000</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>' +
          '<TIMESTAMP_SAMPLE_RATE>48000</TIMESTAMP_SAMPLE_RATE><DIGITIZER_SAMPLE_RATE>48000</DIGITIZER_SAMPLE_RATE></SPEED>',
      ),
    ]);
    expect(file.warnings).toEqual([]);
  });
});

describe('places of tracks', () => {
  const tracksOf = async (channels: number, tracks: readonly [place: number | '', name: string][]) =>
    describedChunks([
      fmt({ channels }),
      data(0),
      ixml(
        `<TRACK_LIST>${tracks
          .map(
            ([place, name]) =>
              `<TRACK><INTERLEAVE_INDEX>${place}</INTERLEAVE_INDEX><NAME>${name}</NAME></TRACK>`,
          )
          .join('')}</TRACK_LIST>`,
      ),
    ]);
  const named = (file: Awaited<ReturnType<typeof tracksOf>>) => file.resolved.tracks.map(({ name }) => name);

  test('named twice go to the first, and tracks without one fill the holes in order', async () => {
    const file = await tracksOf(4, [
      [2, 'two'],
      [2, 'again'],
      ['', 'first hole'],
      ['', 'second hole'],
    ]);
    expect(named(file)).toEqual(['first hole', 'two', 'second hole', undefined]);
    expect(file.warnings).toEqual([]);
  });

  test('of nought, or one beyond the last, are told, twenty of them', async () => {
    const file = await tracksOf(2, [
      [0, 'none'],
      [2, 'last'],
      [3, 'beyond'],
    ]);
    expect(named(file)).toEqual([undefined, 'last']);
    expect(file.warnings).toEqual([
      { code: 'track-index-out-of-range', at: 12 + 24 + 8, channels: 2, indexes: [0, 3] },
    ]);
    const many = await tracksOf(
      1,
      Array.from({ length: 22 }, (_, index) => [index + 2, 'x']),
    );
    expect(many.warnings[0]?.indexes).toEqual(Array.from({ length: 20 }, (_, index) => index + 2));
  });

  test('are those of the list where there is no format', async () => {
    const file = await describedChunks([
      data(),
      ixml('<TRACK_LIST><TRACK><NAME>a</NAME></TRACK></TRACK_LIST>'),
    ]);
    expect(file.resolved.tracks.map(({ name }) => name)).toEqual(['a']);
    expect(codesOf(file)).toEqual(['fmt-missing']);
  });

  test('of a mono file with several lines is that of its number', async () => {
    const mono = await describedChunks([bext({ description: 'sTRK1=Boom\nsTRK2=Lav' }), fmt(), data()]);
    expect(mono.resolved.tracks).toEqual([{ interleave: 1, channel: 1, name: 'Boom', function: undefined }]);
    const stereo = await describedChunks([
      bext({ description: 'sTRK4=Spare' }),
      fmt({ channels: 2 }),
      data(600),
    ]);
    expect(stereo.resolved.tracks.map(({ name }) => name)).toEqual([undefined, undefined]);
  });
});
